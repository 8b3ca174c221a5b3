// The real program on a virtual display of its own, typed into as a person would.
#pragma once

#include <QProcess>

#include "demo_shop.h"
#include "keys.h"

namespace steadyturn {

class RealProgram : public DemoShop {
 protected:
  // A person looks at the window before going on; another process can't tell when there is something to see.
  static constexpr int lookUp = 1000;  // milliseconds
  void SetUp() override;
  void TearDown() override;
  void start(const QStringList& arguments);  // and waits for its window
  void kill();                               // kill -9
  void press(const QString& key) { xdotool({"key", key}); }
  // A line feed is the Enter key.
  void type(const QString& text);
  QString xdotool(const QStringList& arguments);

  QProcess display_, program_;
  QProcessEnvironment environment_;
  QString window_;
};

}  // namespace steadyturn
