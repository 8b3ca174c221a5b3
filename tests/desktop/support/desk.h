// The program's window on a demo depot, worked by real key events only.
#pragma once

#include <QStringList>

#include "bench_place.h"
#include "demo_shop.h"
#include "keys.h"
#include "main_window.h"
#include "shop_room.h"

namespace steadyturn {

class Desk : public DemoShop {
 protected:
  void SetUp() override;
  void openAgain();  // as at the next start
  // The lead Nora and the technician Petra get accounts, and Petra signs in.
  void signInAsTechnician();
  ShopRoom& room() { return *window_->room(); }
  BenchPlace& bench() { return room().bench(); }
  // What the Bench's message says, and what it warns of before the first reading.
  QString said() { return line("message"); }
  QString doubts() { return line("doubts"); }
  bool says(const QString& text);                            // on a visible label
  QString focusName();                                       // the accessible name of what has the focus
  void take(const QString& tool, const QString& reference);  // from the Bench's first field
  void typeLines(const QStringList& readings);               // each with Enter
  void answer(Qt::Key letter);                               // Alt and a letter; what it does runs afterwards

  // Of W06 (10 … 60 N·m, ±4 %).
  static const QStringList passing, failing;
  std::unique_ptr<MainWindow> window_;
  Keys keys_;

 private:
  QString line(const char* name);
};

}  // namespace steadyturn
