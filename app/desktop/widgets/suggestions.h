// A short list under a field while one types: part of the window, not a window of its own, so that keys and shortcuts
// never go astray, whatever the window system does with lists that open.
#pragma once

#include <QListWidget>
#include <vector>

namespace steadyturn {

struct Suggestion {
  QString id;
  QString line;  // as shown
};

class Suggestions : public QListWidget {
  Q_OBJECT
 public:
  // Shows itself under `field`, which keeps the focus.
  explicit Suggestions(QWidget& field);

  void offer(const std::vector<Suggestion>& suggestions);  // nothing to offer hides it
  void step(int by);                                       // to the next or the one before
  QString chosen() const;                                  // the id stepped to; "" while none is

 signals:
  void clickedOn(const QString& id);

 private:
  void placeBelowField();
  QWidget& field_;
};

}  // namespace steadyturn
