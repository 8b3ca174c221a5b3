#include "shop_room.h"

#include <QHBoxLayout>
#include <QStackedWidget>
#include <algorithm>

#include "act_guard.h"
#include "bay_place.h"
#include "bench_place.h"
#include "cabinet_place.h"
#include "history_place.h"
#include "people_bar.h"
#include "problem_text.h"
#include "shop_people.h"
#include "text.h"
#include "transfer_panel.h"

namespace steadyturn {

ShopRoom::ShopRoom(Shop shop, QWidget* parent)
    : QWidget(parent),
      shop_(new OpenShop(std::move(shop), this)),
      rail_(new PlacesRail(this)),
      people_(new PeopleBar(*shop_, this)),
      transfer_(new TransferPanel(*shop_, this)),
      places_(new QStackedWidget(this)),
      bench_(new BenchPlace(*shop_, places_)),
      cabinet_(new CabinetPlace(*shop_, places_)),
      bay_(new BayPlace(*shop_, places_)),
      history_(new HistoryPlace(*shop_, places_)) {
  for (QWidget* place : std::initializer_list<QWidget*>{bench_, cabinet_, bay_, history_}) places_->addWidget(place);
  transfer_->hide();
  auto* column = new QVBoxLayout;
  column->setSpacing(0);
  column->addWidget(people_);
  column->addWidget(transfer_);
  column->addWidget(places_, 1);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  row->addWidget(rail_);
  row->addLayout(column, 1);

  connect(people_, &PeopleBar::aboutToLock, this, [this] { keepTyped(); });
  connect(shop_, &OpenShop::peopleChanged, this, &ShopRoom::showPermissions);
  connect(rail_, &PlacesRail::wanted, this, &ShopRoom::go);
  connect(transfer_, &TransferPanel::closed, this, &ShopRoom::arrive);
  const auto toHistory = [this](const QString& tool) {
    history_->open(tool);
    go(Place::History);
  };
  connect(cabinet_, &CabinetPlace::checkWanted, this, &ShopRoom::takeToBench);
  connect(cabinet_, &CabinetPlace::historyWanted, this, toHistory);
  connect(cabinet_, &CabinetPlace::importWanted, this,
          [this](TableKind kind) { transfer(PathLine::Direction::Read, kind); });
  connect(cabinet_, &CabinetPlace::exportWanted, this,
          [this](TableKind kind) { transfer(PathLine::Direction::Write, kind); });
  connect(bench_, &BenchPlace::historyWanted, this, toHistory);
  connect(bench_, &BenchPlace::recallWanted, this, [this](const QString& tool) {
    history_->openRecall(tool);
    go(Place::History);
  });
  connect(history_, &HistoryPlace::checkWanted, this, &ShopRoom::takeToBench);
  connect(history_, &HistoryPlace::correctionWanted, this, [this](std::int64_t check) {
    if (!reasonFor(Act::CorrectCheck).isEmpty()) return;
    go(Place::Bench);
    bench_->correct(check);
  });
}

ShopRoom::~ShopRoom() {
  // The places work on the shop: they go first.
  delete people_;
  delete transfer_;
  delete places_;
}

void ShopRoom::go(Place place) {
  if (!reasonFor(place).isEmpty()) place = Place::Cabinet;
  place_ = place;
  rail_->setPlace(place);
  places_->setCurrentIndex(static_cast<int>(place));
  arrive();
  emit wentTo(place);
}

QString ShopRoom::reasonFor(Act act) {
  const Result<void> allowed = may(shop_->shop(), act);
  return allowed ? QString() : wordProblems(allowed.error());
}

// Everybody may look round; the Bench is for checks alone. Who is only locked out stays there, with all that is
// typed.
QString ShopRoom::reasonFor(Place place) {
  if (place != Place::Bench || people_->locked()) return {};
  return reasonFor(Act::RecordCheck);
}

void ShopRoom::showPermissions() {
  for (ActGuard* guard : window()->findChildren<ActGuard*>()) guard->setReason(reasonFor(guard->act()));
  for (const Place place : allPlaces) rail_->setReason(place, reasonFor(place));
  bench_->setEnabled(reasonFor(Act::RecordCheck).isEmpty());
  if (!reasonFor(place_).isEmpty()) go(Place::Cabinet);
  people_->refresh();
  emit permissionsChanged();
}

void ShopRoom::takeToBench(const QString& tool) {
  if (!reasonFor(Place::Bench).isEmpty()) return;
  go(Place::Bench);
  if (!tool.isEmpty()) bench_->take(tool);
}

Result<void> ShopRoom::openScanned(const std::string& id) {
  const Result<Tool> tool = shop_->shop().tool(id);
  if (!tool) {
    // Readings typed on behind the label are not those of the tool that was there before.
    if (place_ == Place::Bench) bench_->askForTool();
    return tl::unexpected(tool.error());
  }
  const QString mark = fromText(tool->id);
  if (place_ == Place::Bench) {
    bench_->take(mark);
  } else if (place_ != Place::Bay || !bay_->takeTool(mark)) {
    history_->open(mark);
    go(Place::History);
  }
  return {};
}

void ShopRoom::arrive() {
  switch (place_) {
    case Place::Bench:
      return bench_->arrive();
    case Place::Cabinet:
      return cabinet_->arrive();
    case Place::Bay:
      return bay_->arrive();
    case Place::History:
      return history_->arrive();
  }
}

void ShopRoom::transfer(PathLine::Direction direction, TableKind kind) { transfer_->begin(direction, kind); }

std::vector<std::string> ShopRoom::keepTyped() {
  std::vector<std::string> unsaved;
  if (!bench_->model().keepForNextStart()) unsaved = bench_->model().unsavedTools();
  if (bench_->setup().keepForNextStart()) return unsaved;
  for (std::string& tool : bench_->setup().unsavedTools()) {
    if (std::ranges::find(unsaved, tool) == unsaved.end()) unsaved.push_back(std::move(tool));
  }
  return unsaved;
}

}  // namespace steadyturn
