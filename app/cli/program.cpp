#include "program.h"

#include <CLI/CLI.hpp>

#include "command.h"
#include "display_text.h"
#include "evaluate_commands.h"
#include "exit_status.h"
#include "shop_commands.h"
#include "standard_streams.h"
#include "utf8.h"
#include "words.h"

namespace steadyturn {
namespace {

constexpr const char* closing =
    "Exit status: 0 done; 1 verify found damage; 64 bad usage; 65 bad input data; 66 input file missing; 69 database "
    "unavailable;\n"
    "73 output can't be created; 77 not permitted; 130 cancelled.\n"
    "Example: sturn convert 20 lbf.ft N.m";

int print(const std::string& text) {
  const auto written = writeStandardOutput(text);
  if (written) return exit_status::done;
  for (const Problem& problem : written.error()) writeMessage(words(problem));
  return exitStatusFor(written.error());
}

int fail(const Problems& problems) {
  for (const Problem& problem : problems) writeMessage(words(problem));
  return exitStatusFor(problems);
}

// The command that help was asked about, for example "sturn evaluate".
std::string calledCommand(const CLI::App& app) {
  std::string name = app.get_name();
  const CLI::App* deepest = &app;
  while (!deepest->get_subcommands().empty()) {
    deepest = deepest->get_subcommands().front();
    name += ' ' + deepest->get_name();
  }
  return name;
}

std::string complaint(const CLI::App& app, const CLI::ParseError& error) {
  if (dynamic_cast<const CLI::RequiredError*>(&error) == nullptr) return displayText(error.what());
  // A word that names no command only leaves the command missing; say which word it was.
  const auto unknown = app.remaining(true);
  if (!unknown.empty()) return "unknown command or argument \"" + displayText(unknown.front()) + '"';
  return displayText(error.what());
}

int refuseUsage(const CLI::App& app, const CLI::ParseError& error) {
  writeMessage(complaint(app, error) + " (see " + calledCommand(app) + " --help)");
  return exit_status::badUsage;
}

int run(const Command& command) {
  const auto output = command();
  if (!output) return fail(output.error());
  for (const std::string& caution : output->cautions) writeMessage(displayText(caution));
  const int printed = print(output->text);
  return printed == exit_status::done ? output->status : printed;
}

Problems argumentsThatAreNotText(int argc, char** argv) {
  Problems problems;
  for (int i = 1; i < argc; ++i) {
    if (!firstBadByte(argv[i])) continue;
    problems.push_back({.field = "argument " + std::to_string(i), .found = argv[i], .accepted = "text in UTF-8"});
  }
  return problems;
}

}  // namespace

int runProgram(int argc, char** argv) {
  prepareStandardStreams();
  if (const Problems problems = argumentsThatAreNotText(argc, argv); !problems.empty()) return fail(problems);

  CLI::App app("Torque wrenches that can be believed, and joints that hold: checks, drift, delivered torque.",
               "sturn");
  app.set_version_flag("--version", "sturn " STEADYTURN_VERSION);
  app.footer(closing);
  app.fallthrough();
  app.require_subcommand(1);
  Command chosen;
  Context context(app, chosen);
  addConvertCommand(app, chosen);
  addEvaluateCommands(app, chosen);
  addShopCommands(context);

  try {
    app.parse(argc, argv);
  } catch (const CLI::CallForHelp&) {
    return print(app.help());
  } catch (const CLI::CallForVersion& version) {
    return print(std::string(version.what()) + '\n');
  } catch (const CLI::ParseError& error) {
    return refuseUsage(app, error);
  }
  return run(chosen);
}

}  // namespace steadyturn
