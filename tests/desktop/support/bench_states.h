// Leads a window with the demo depot through every state of the Bench, by real keys, and shows each.
#pragma once

#include <QSize>
#include <QString>
#include <functional>

namespace steadyturn {

class MainWindow;
using LookAtBench = std::function<void(MainWindow& window, const QString& state)>;

// `shopFile` is a demo depot of its own; it is written to. The window closes at the end.
void throughBenchStates(const QString& shopFile, QSize size, const LookAtBench& look);

}  // namespace steadyturn
