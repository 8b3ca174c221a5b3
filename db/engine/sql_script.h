// Takes an SQL script apart: Qt's SQLite driver runs one statement at a time, and its
// PostgreSQL driver tells of the first one's trouble only.
#pragma once

#include <string_view>
#include <vector>

namespace steadyturn {

// The statements, without their ';'. Quotes ('', "", ``, [], $$), comments (-- and /* */) and the bodies of triggers
// (BEGIN … END, with CASE … END inside) are respected. A piece of nothing but space and comments is left out.
std::vector<std::string_view> splitStatements(std::string_view script);

}  // namespace steadyturn
