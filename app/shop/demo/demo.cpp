#include "demo.h"

#include <algorithm>
#include <map>

#include "check_recording.h"
#include "writing.h"

namespace steadyturn {

namespace {

// The depot's own clock: work of a day is entered at noon.
void setClock(Shop::Inside& shop, Date date) {
  shop.now = [date] { return writeDate(date) + "T12:00:00.000Z"; };
}

void addStock(Shop::Inside& shop, const Writing& writing, const std::vector<DemoTool>& tools,
              const std::vector<Fastener>& fasteners) {
  setClock(shop, std::chrono::sys_days(std::chrono::year(2020) / 12 / 1));
  shop.facts.set("shop_id", "demo-depot", writing.stamp());
  shop.facts.set("name", "Municipal vehicle depot (demo)", writing.stamp());
  shop.facts.set("place", "hall 1, works yard", writing.stamp());
  shop.facts.set("demo_today", writeDate(demoToday), writing.stamp());
  for (const auto& reference : demoReferences()) shop.references.add(reference, writing.stamp());
  for (const auto& demo : tools) shop.tools.add(demo.tool, writing.stamp());
  for (const auto& fastener : fasteners) shop.fasteners.add(fastener, writing.stamp());
  for (const auto& fastener : fasteners) {
    if (fastener.id != demoUnreleased) {
      shop.approvals.add(fastener, "workshop lead", std::chrono::sys_days(std::chrono::year(2020) / 12 / 2),
                         writing.stamp());
    }
  }
  for (const auto& service : demoServices(fasteners)) shop.jobs.setService(service, writing.stamp());
}

// Today's work: one sheet is open, nothing on it is done yet.
void openJob(Shop::Inside& shop, const Writing& writing) {
  setClock(shop, demoToday);
  const auto service = shop.jobs.service("oil and filter, panel van");
  shop.jobs.add({.kind = JobEventKind::Opened,
                 .job = "J1000",
                 .vehicle = "panel van 2",
                 .date = demoToday,
                 .service = service->name,
                 .fasteners = service->fasteners,
                 .by = "hall 1, team north",
                 .note = {}},
                writing.stamp());
}

Result<void> addCheck(Shop::Inside& shop, const Writing& writing, const CheckDraft& draft) {
  const auto tool = shop.tools.find(draft.tool);
  const auto reference = shop.references.find(draft.reference);
  const auto evaluated =
      evaluateTyped(draft, {.tool = &*tool, .reference = &*reference, .rule = DecisionRule::Simple, .variation = {}});
  if (!evaluated) return tl::unexpected(evaluated.error());
  setClock(shop, draft.date);
  shop.checks.add(evaluated->check, writing.stamp());
  return {};
}

}  // namespace

Result<void> fillDemo(Shop::Inside& shop, const Progress& progress) {
  const auto tools = demoTools();
  const auto fasteners = demoFasteners();
  const auto checks = demoChecks(tools);
  const auto tightenings = demoTightenings(fasteners);
  auto events = demoStatusEvents();
  Writing writing(shop, Act::Import);
  addStock(shop, writing, tools, fasteners);
  auto tightening = tightenings.begin();
  std::size_t done = 0;
  for (const auto& draft : checks) {
    for (; tightening != tightenings.end() && tightening->date <= draft.date; ++tightening) {
      setClock(shop, tightening->date);
      shop.tightenings.add(*tightening, writing.stamp());
    }
    if (auto added = addCheck(shop, writing, draft); !added) return added;
    if (progress && !progress(static_cast<double>(++done) / static_cast<double>(checks.size()))) {
      return refuse({.kind = ProblemKind::Cancelled});
    }
  }
  for (; tightening != tightenings.end(); ++tightening) {
    setClock(shop, tightening->date);
    shop.tightenings.add(*tightening, writing.stamp());
  }
  for (const auto& event : events) {
    setClock(shop, event.date);
    shop.tools.setStatus(event.tool, event.status, event.reason, event.date, writing.stamp());
  }
  openJob(shop, writing);
  writing.commit();
  return {};
}

}  // namespace steadyturn
