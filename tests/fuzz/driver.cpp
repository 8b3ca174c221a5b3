// driver SECONDS FILE-OR-FOLDER… : runs a target on every seed, then on what becomes of them by chance. Built with
// -fsanitize-coverage=trace-pc (preset fuzz) it keeps what reaches code that nothing reached before; without, it goes
// on from the seeds alone. An input that ends the program lies in fuzz-last-input afterwards.
#include "driver.h"

#include <fcntl.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;
using Input = std::string;

constexpr std::size_t places = 1U << 16;
std::array<unsigned char, places> reached{};
bool somethingNew = false;

constexpr std::size_t longest = 1U << 20;
constexpr const char* lastInput = "fuzz-last-input";

std::vector<Input> read(const fs::path& path) {
  std::vector<Input> inputs;
  const auto take = [&](const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    inputs.emplace_back(std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>());
  };
  if (!fs::is_directory(path)) {
    take(path);
    return inputs;
  }
  for (const auto& entry : fs::recursive_directory_iterator(path)) {
    if (entry.is_regular_file()) take(entry.path());
  }
  return inputs;
}

class Chance {
 public:
  explicit Chance(std::uint64_t seed) : random_(seed) {}
  std::size_t below(std::size_t end) { return end == 0 ? 0 : random_() % end; }

  Input mutated(const Input& from, const std::vector<Input>& pool) {
    Input input = from;
    for (std::size_t steps = 1 + below(6); steps > 0; --steps) step(input, pool);
    if (input.size() > longest) input.resize(longest);
    return input;
  }

 private:
  void step(Input& input, const std::vector<Input>& pool) {
    static constexpr std::array<std::string_view, 26> telling{
        "\"",   "\"\"",
        ",",    ";",
        "\r\n", "\xEF\xBB\xBF",
        "\xff", "1e999",
        "-0",   "NaN",
        "{",    "}",
        "[",    "{value}",
        "'",    "--",
        "END;", "9999999999999999999",
        "<",    "<![CDATA[",
        "]]>",  "<!--",
        "-->",  "/>",
        "&#0;", "<!DOCTYPE d [<!ENTITY x SYSTEM \"file:///etc/hostname\">]>"};
    const auto at = below(input.size() + 1);
    switch (below(8)) {
      case 0:
        if (!input.empty()) input[below(input.size())] = static_cast<char>(below(256));
        break;
      case 1:
        if (!input.empty()) input[below(input.size())] ^= static_cast<char>(1U << below(8));
        break;
      case 2:
        input.insert(at, 1, static_cast<char>(below(256)));
        break;
      case 3:
        input.erase(at, below(16));
        break;
      case 4:
        input.insert(at, telling[below(telling.size())]);
        break;
      case 5: {
        const auto& other = pool[below(pool.size())];
        const auto begin = below(other.size() + 1);
        input.insert(at, other, begin, below(64));
        break;
      }
      case 6:
        input.insert(at, input, below(input.size() + 1), below(256));
        break;
      default:
        input.resize(at);
    }
  }

  std::mt19937_64 random_;
};

// Kept before the run: whatever ends the program, it was this one.
void run(const Input& input, int last) {
  if (::ftruncate(last, 0) != 0 || ::pwrite(last, input.data(), input.size(), 0) < 0) std::exit(73);
  LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(input.data()), input.size());
}

}  // namespace

// Called by the compiler's instrumentation at every edge.
extern "C" void __sanitizer_cov_trace_pc();
extern "C" void __sanitizer_cov_trace_pc() {
  const auto from = reinterpret_cast<std::uintptr_t>(__builtin_return_address(0));
  auto& place = reached[(from ^ (from >> 16)) % places];
  somethingNew = somethingNew || place == 0;
  place = 1;
}

int main(int argc, char** argv) {
  if (argc < 3) {
    std::fprintf(stderr, "driver SECONDS FILE-OR-FOLDER…\n");
    return 64;
  }
  const auto seconds = std::chrono::duration<double>(std::atof(argv[1]));
  const auto seed =
      std::getenv("FUZZ_SEED") ? std::strtoull(std::getenv("FUZZ_SEED"), nullptr, 10) : std::random_device{}();
  std::vector<Input> pool{Input()};
  for (int i = 2; i < argc; ++i) {
    for (auto& input : read(argv[i])) pool.push_back(std::move(input));
  }
  const int last = ::open(lastInput, O_RDWR | O_CREAT | O_TRUNC | O_CLOEXEC, 0644);
  if (last < 0) return 73;
  for (const auto& input : pool) run(input, last);
  const auto seeds = pool.size();
  Chance chance(seed);
  std::size_t runs = 0;
  for (const auto end = std::chrono::steady_clock::now() + seconds; std::chrono::steady_clock::now() < end; ++runs) {
    Input input = chance.mutated(pool[chance.below(pool.size())], pool);
    somethingNew = false;
    run(input, last);
    if (somethingNew) pool.push_back(std::move(input));
  }
  ::close(last);
  fs::remove(lastInput);
  std::printf("seed %llu: %zu seeds, %zu runs, %zu kept\n", static_cast<unsigned long long>(seed), seeds, runs,
              pool.size() - seeds);
  return 0;
}
