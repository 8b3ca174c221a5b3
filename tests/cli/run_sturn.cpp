#include "run_sturn.h"

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <cstdlib>
#include <stdexcept>
#include <thread>

namespace steadyturn::test {
namespace {

struct Pipe {
  Pipe() {
    std::array<int, 2> ends{};
    if (::pipe2(ends.data(), O_CLOEXEC) != 0) throw std::runtime_error("pipe");
    read = ends[0];
    write = ends[1];
  }
  int read, write;
};

std::string drain(int descriptor) {
  std::string text;
  std::array<char, 65536> block{};
  for (ssize_t got = 0; (got = ::read(descriptor, block.data(), block.size())) > 0;) {
    text.append(block.data(), static_cast<std::size_t>(got));
  }
  ::close(descriptor);
  return text;
}

void feed(int descriptor, const std::string& text) {
  for (std::size_t at = 0; at < text.size();) {
    const ssize_t written = ::write(descriptor, text.data() + at, text.size() - at);
    if (written <= 0) break;  // the program had read enough
    at += static_cast<std::size_t>(written);
  }
  ::close(descriptor);
}

[[noreturn]] void becomeSturn(const std::vector<std::string>& arguments, const Setting& setting, const Pipe& in,
                              const Pipe& out, const Pipe& err) {
  ::dup2(in.read, STDIN_FILENO);
  ::dup2(setting.outputFile.empty() ? out.write : ::open(setting.outputFile.c_str(), O_WRONLY | O_CREAT, 0644),
         STDOUT_FILENO);
  ::dup2(err.write, STDERR_FILENO);
  ::signal(SIGPIPE, SIG_DFL);
  ::unsetenv("STURN_SHOP");
  for (const std::string& entry : setting.environment) {
    const std::size_t equals = entry.find('=');
    ::setenv(entry.substr(0, equals).c_str(), entry.c_str() + equals + 1, 1);
  }
  if (!setting.folder.empty() && ::chdir(setting.folder.c_str()) != 0) ::_exit(126);
  std::vector<char*> argv;
  std::string program = STURN_PROGRAM;
  argv.push_back(program.data());
  std::vector<std::string> kept = arguments;
  for (std::string& argument : kept) argv.push_back(argument.data());
  argv.push_back(nullptr);
  ::execv(program.c_str(), argv.data());
  ::_exit(127);
}

}  // namespace

Answer sturn(const std::vector<std::string>& arguments, const Setting& setting) {
  ::signal(SIGPIPE, SIG_IGN);
  const Pipe in, out, err;
  const pid_t child = ::fork();
  if (child < 0) throw std::runtime_error("fork");
  if (child == 0) becomeSturn(arguments, setting, in, out, err);
  ::close(in.read);
  ::close(out.write);
  ::close(err.write);

  Answer answer;
  std::thread feeding([&] { feed(in.write, setting.input); });
  std::thread listening([&] { answer.err = drain(err.read); });
  answer.out = drain(out.read);
  listening.join();
  feeding.join();
  int status = 0;
  ::waitpid(child, &status, 0);
  answer.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  return answer;
}

Answer evaluate(const std::string& what, const std::string& document) {
  return sturn({"evaluate", what}, {.input = document, .environment = {}, .outputFile = {}, .folder = {}});
}

}  // namespace steadyturn::test
