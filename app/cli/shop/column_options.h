// The columns of a kind of record as options of a command: column `part_limit` is `--part-limit`.
#pragma once

#include <CLI/App.hpp>
#include <map>
#include <memory>
#include <span>
#include <string>

#include "typed_values.h"

namespace steadyturn {

struct ColumnOption {
  const char* name = "";  // as the column
  const char* help = "";
  bool needed = false;
};

// What was typed for each column, by its name; one that was not typed is not in it.
class ColumnTexts {
 public:
  bool has(const std::string& name) const { return texts_.contains(name); }
  std::string text(const std::string& name) const { return has(name) ? texts_.at(name) : std::string(); }
  void set(const std::string& name, std::string text) { texts_[name] = std::move(text); }

 private:
  std::map<std::string, std::string> texts_;
};

// Adds the options to `command`; those needed are required where `requireNeeded`. What is typed lands in the result.
std::shared_ptr<ColumnTexts> addColumnOptions(CLI::App& command, std::span<const ColumnOption> columns,
                                              bool requireNeeded);

}  // namespace steadyturn
