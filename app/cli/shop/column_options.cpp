#include "column_options.h"

#include <CLI/CLI.hpp>
#include <algorithm>

namespace steadyturn {

std::shared_ptr<ColumnTexts> addColumnOptions(CLI::App& command, std::span<const ColumnOption> columns,
                                              bool requireNeeded) {
  auto texts = std::make_shared<ColumnTexts>();
  for (const ColumnOption& column : columns) {
    std::string dashed = column.name;
    std::ranges::replace(dashed, '_', '-');
    const auto keep = [texts, name = std::string(column.name)](const std::string& typed) { texts->set(name, typed); };
    CLI::Option* option = command.add_option_function<std::string>("--" + dashed, keep, column.help);
    option->type_name("")->required(requireNeeded && column.needed);
  }
  return texts;
}

}  // namespace steadyturn
