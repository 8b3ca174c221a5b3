// Runs the built `sturn` the way a script would, and keeps what it said.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace steadyturn::test {

struct Answer {
  int status = -1;  // exit status; 128 + signal where one ended it
  std::string out, err;

  nlohmann::json json() const { return nlohmann::json::parse(out); }
};

struct Setting {
  std::string input;                     // standard input
  std::vector<std::string> environment;  // "NAME=value", over the test's own; STURN_SHOP is taken away first
  std::string outputFile;                // standard output goes there ("/dev/full") instead of into `out`
  std::string folder;                    // working folder
};

Answer sturn(const std::vector<std::string>& arguments, const Setting& setting = {});

// `sturn evaluate WHAT` on a document.
Answer evaluate(const std::string& what, const std::string& document);

}  // namespace steadyturn::test
