// The four places of one open shop. Another shop gets another room.
#pragma once

#include <QWidget>
#include <string>
#include <vector>

#include "open_shop.h"
#include "path_line.h"
#include "permission.h"
#include "places_rail.h"

class QStackedWidget;

namespace steadyturn {

class BayPlace;
class BenchPlace;
class CabinetPlace;
class HistoryPlace;
class PeopleBar;
class TransferPanel;

class ShopRoom : public QWidget {
  Q_OBJECT
 public:
  explicit ShopRoom(Shop shop, QWidget* parent = nullptr);
  ~ShopRoom() override;

  void go(Place place);
  void takeToBench(const QString& tool);
  // A tool whose label was scanned: at the Bench it is taken up, in the Bay chosen for the fastener at hand,
  // elsewhere its History opens.
  Result<void> openScanned(const std::string& tool);
  void arrive();  // back to the place one was at
  Place place() const { return place_; }
  void transfer(PathLine::Direction direction, TableKind kind);
  OpenShop& shop() { return *shop_; }
  BenchPlace& bench() { return *bench_; }
  CabinetPlace& cabinet() { return *cabinet_; }
  BayPlace& bay() { return *bay_; }
  HistoryPlace& history() { return *history_; }
  // What is typed and not saved goes to disk, to be offered at the next start. What is not sure to be there: its
  // tools.
  std::vector<std::string> keepTyped();
  PeopleBar& people() { return *people_; }
  // Why who is signed in has nothing to do at a place; empty where there is something.
  QString reasonFor(Place place);
  QString reasonFor(Act act);

 signals:
  void wentTo(steadyturn::Place place);
  void permissionsChanged();  // reasonFor() may say something else

 private:
  void showPermissions();

  OpenShop* shop_;
  Place place_ = Place::Cabinet;
  PlacesRail* rail_;
  PeopleBar* people_;
  TransferPanel* transfer_;
  QStackedWidget* places_;
  BenchPlace* bench_;
  CabinetPlace* cabinet_;
  BayPlace* bay_;
  HistoryPlace* history_;
};

}  // namespace steadyturn
