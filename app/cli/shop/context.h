// What every command on a shop shares: the command line at hand, which command was chosen, which shop was named.
#pragma once

#include <CLI/App.hpp>
#include <functional>
#include <string>

#include "command.h"
#include "shop.h"

namespace steadyturn {

// Which shop, opened how, and who does it.
struct Caller {
  std::string shop;
  std::string as;      // empty: nobody signs in
  bool audit = false;  // to be looked at alone
};

enum class Face {
  Text,    // no window system needed
  Picture  // fonts and charts are drawn: an off-screen one is used unless the environment says otherwise
};

class Context {
 public:
  // Adds `--shop`, `--as` and `--audit` to `app`, which must outlive this.
  Context(CLI::App& app, Command& chosen);
  Context(const Context&) = delete;
  Context& operator=(const Context&) = delete;

  // A command that works on an existing shop. `example` is what to type after "Example: ".
  CLI::App* add(CLI::App& parent, const std::string& name, const std::string& purpose, const std::string& example);
  // A word that only groups commands ("tool").
  CLI::App* addGroup(const std::string& name, const std::string& purpose);

  using Work = std::function<Result<Output>(Shop&)>;
  // Makes `work` what the command does. Bad usage when no shop is named.
  void runs(CLI::App* command, Work work, Face face = Face::Text);
  // For a command that makes its shop itself: called while parsing, it says what will run.
  void choose(Command command) { chosen_ = std::move(command); }

  CLI::App& app() { return app_; }
  const std::string& shop() const { return caller_.shop; }
  const Caller& caller() const { return caller_; }

 private:
  CLI::App& app_;
  Command& chosen_;
  Caller caller_;
};

// Ends parsing: `message` says what is wrong with how the command was typed.
[[noreturn]] void refuseUsage(const std::string& argument, const std::string& message);

}  // namespace steadyturn
