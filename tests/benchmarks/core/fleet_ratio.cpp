// Fitting a fleet of 1,000 tools × 20 checks beside R's lmer on the same figures in one run, and how the cost grows
// with the tools. Both in processor time, so that whatever else the machine does falls on neither. Without R the
// first is skipped, with a word.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <random>
#include <vector>

#include "fleet_model.h"

namespace {

using namespace steadyturn;

constexpr int checksEach = 20;

struct Record {
  std::vector<double> x, y;
  std::vector<std::size_t> sizes;
};

// Every tool has a drift of its own and is adjusted once, after its tenth check; always the same.
std::vector<Record> makeFleet(int tools) {
  std::mt19937_64 random(3);
  std::normal_distribution<double> normal;
  std::uniform_real_distribution<double> wait(0.3, 0.7);
  std::vector<Record> fleet(static_cast<std::size_t>(tools));
  for (Record& tool : fleet) {
    const double slope = 0.25 + 0.3 * normal(random);
    double level = normal(random);
    double x = 0;
    tool.sizes = {checksEach / 2, checksEach / 2};
    for (int i = 0; i < checksEach; ++i) {
      if (i == checksEach / 2) level = 0.3 * normal(random) - slope * x;
      tool.x.push_back(x);
      tool.y.push_back(level + slope * x + 0.3 * normal(random));
      x += wait(random);
    }
  }
  return fleet;
}

void writeFleet(const std::vector<Record>& fleet, const std::string& path) {
  std::ofstream out(path);
  out << "tool,segment,x,y\n";
  for (std::size_t tool = 0; tool < fleet.size(); ++tool) {
    for (std::size_t i = 0; i < fleet[tool].x.size(); ++i) {
      out << fmt::format("{},{},{},{}\n", tool, 2 * tool + (i < fleet[tool].sizes[0] ? 0 : 1), fleet[tool].x[i],
                         fleet[tool].y[i]);
    }
  }
}

// All of it: sums, fit, standard errors, and a prediction for every tool.
double fitOnce(const std::vector<Record>& fleet, FleetVariances& variances) {
  std::vector<SlopeSums> sums;
  sums.reserve(fleet.size());
  for (const Record& tool : fleet) sums.push_back(sumsOf(tool.x, tool.y, tool.sizes));
  const auto model = FleetModel::estimated(sums).value();
  variances = model.variances();
  double total = 0;
  for (const SlopeSums& tool : sums) total += model.predict(tool, 12).standardError;
  return total;
}

double medianSeconds(const std::vector<Record>& fleet, int times, FleetVariances& variances) {
  std::array<double, 9> taken{};
  for (double& one : taken) {
    const auto start = std::clock();
    for (int i = 0; i < times; ++i) {
      if (!(fitOnce(fleet, variances) > 0)) std::abort();
    }
    one = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC / times;
  }
  std::ranges::sort(taken);
  return taken[taken.size() / 2];
}

struct ByR {
  double seconds = 0, slope = 0, residual = 0;
};

std::optional<ByR> askR(const std::string& file) {
  if (std::system("Rscript -e 'library(lme4)' >/dev/null 2>&1") != 0) return std::nullopt;
  const std::string command = fmt::format("Rscript {} {} 3", FLEET_LMER, file);
  std::FILE* pipe = popen(command.c_str(), "r");
  if (pipe == nullptr) return std::nullopt;
  ByR result;
  const bool read = std::fscanf(pipe, "%lf %lf %lf", &result.seconds, &result.slope, &result.residual) == 3;
  return pclose(pipe) == 0 && read ? std::optional(result) : std::nullopt;
}

}  // namespace

int main() {
  const auto thousand = makeFleet(1000);
  FleetVariances variances;
  const double ours = medianSeconds(thousand, 20, variances);
  const auto file = (std::filesystem::temp_directory_path() / "steadyturn_fleet.csv").string();
  writeFleet(thousand, file);
  if (const auto r = askR(file)) {
    fmt::print("fleet: {:.0f} x as fast as lmer (1,000 tools x 20 checks: {:.2f} ms against {:.0f} ms)\n",
               r->seconds / ours, 1000 * ours, 1000 * r->seconds);
    fmt::print("  variances of slopes and checks: {:.5f} {:.5f}, lmer's (random levels) {:.5f} {:.5f}\n",
               variances.slope, variances.residual, r->slope, r->residual);
  } else {
    fmt::print("fleet: {:.2f} ms; beside lmer: skipped, no R with lme4 on this machine\n", 1000 * ours);
  }
  std::filesystem::remove(file);
  const auto tenThousand = makeFleet(10'000);
  fmt::print("fleet: {:.1f} x as long for 10,000 tools as for 1,000\n",
             medianSeconds(tenThousand, 2, variances) / ours);
}
