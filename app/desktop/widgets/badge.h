// A sign and a word in one tone: "✓ pass".
#pragma once

#include <QLabel>

#include "looks.h"

namespace steadyturn {

// Paints the sign and the word into `place`, elided on the right. For table cells.
void paintLook(QPainter& painter, const QRect& place, const Look& look, const QColor& colour);

class Badge : public QLabel {
  Q_OBJECT
 public:
  explicit Badge(QWidget* parent = nullptr);
  void setLook(const Look& look);
  void clearLook();  // shows nothing
  const Look& look() const { return look_; }
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override { return sizeHint(); }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  Look look_;
};

}  // namespace steadyturn
