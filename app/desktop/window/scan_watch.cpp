#include "scan_watch.h"

#include <QApplication>
#include <utility>

namespace steadyturn {
namespace {

const QString prefix = QStringLiteral("STURN:");
// Between two keys. A slow scanner sends some 30 a second; who types faster than 10 a second has begun no word of
// this kind.
constexpr int pauseWithin = 100;  // milliseconds

bool isModifier(int key) {
  return key == Qt::Key_Shift || key == Qt::Key_Control || key == Qt::Key_Alt || key == Qt::Key_CapsLock ||
         key == Qt::Key_AltGr;
}

}  // namespace

ScanWatch::ScanWatch(QObject* parent) : QObject(parent) {
  pause_.setSingleShot(true);
  pause_.setInterval(pauseWithin);
  connect(&pause_, &QTimer::timeout, this, &ScanWatch::pauseOver);
  qApp->installEventFilter(this);
}

bool ScanWatch::eventFilter(QObject* watched, QEvent* event) {
  if (releasing_) return false;
  if (event->type() == QEvent::KeyPress) return press(watched, *static_cast<QKeyEvent*>(event));
  // A key that was held down goes up after it, whenever that is.
  if (event->type() == QEvent::KeyRelease && !held_.empty()) return hold(watched, *static_cast<QKeyEvent*>(event));
  return false;
}

bool ScanWatch::press(QObject* receiver, const QKeyEvent& event) {
  if (isModifier(event.key())) return !held_.empty() && hold(receiver, event);
  const bool enter = event.key() == Qt::Key_Return || event.key() == Qt::Key_Enter;
  if (enter && typed_.size() > prefix.size()) {
    const QString code = typed_;
    pause_.stop();
    held_.clear();
    typed_.clear();
    // Before another key is let in: what is typed behind a code is meant for what it opens.
    emit scanned(code);
    return true;
  }
  const bool plain = (event.modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier)) == 0;
  const QString text = plain ? event.text().toUpper() : QString();
  const QString longer = typed_ + text;
  const bool fits = text.size() == 1 && text.at(0).isPrint() &&
                    (longer.size() <= prefix.size() ? prefix.startsWith(longer) : longer.startsWith(prefix));
  if (fits) {
    typed_ = longer;
    return hold(receiver, event);
  }
  release();
  if (text.isEmpty() || !prefix.startsWith(text)) return false;
  typed_ = text;  // this one may prefix a code
  return hold(receiver, event);
}

bool ScanWatch::hold(QObject* receiver, const QKeyEvent& event) {
  held_.push_back({receiver, event.type(), event.key(), event.modifiers(), event.text()});
  pause_.start();
  sinceKey_.start();
  return true;
}

// While the program was busy, keys may wait behind this: they are let in before it is a person's pause.
void ScanWatch::pauseOver() {
  if (sinceKey_.elapsed() < qint64{2} * pauseWithin) return release();
  pause_.start();
  sinceKey_.start();
}

void ScanWatch::release() {
  pause_.stop();
  typed_.clear();
  const std::vector<Held> held = std::exchange(held_, {});
  releasing_ = true;
  for (const Held& key : held) {
    if (!key.receiver) continue;
    QKeyEvent again(key.type, key.key, key.modifiers, key.text);
    QApplication::sendEvent(key.receiver, &again);
  }
  releasing_ = false;
}

}  // namespace steadyturn
