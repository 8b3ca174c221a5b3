// The one number that matters, to be read from a metre away, and the same in the other unit.
#pragma once

#include <QWidget>

namespace steadyturn {

class TorqueDisplay : public QWidget {
  Q_OBJECT
 public:
  static constexpr int firstPixels = 64;
  static constexpr int secondPixels = 48;
  explicit TorqueDisplay(QWidget* parent = nullptr);
  void display(const QString& first, const QString& second);
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override { return sizeHint(); }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QFont fontOf(int pixels, bool bold) const;
  QString first_, second_;
};

}  // namespace steadyturn
