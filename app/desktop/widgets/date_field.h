// A day, typed as ISO 8601 or picked from a calendar.
#pragma once

#include <QDateEdit>

#include "date.h"

namespace steadyturn {

class DateField : public QDateEdit {
  Q_OBJECT
 public:
  explicit DateField(const QString& accessibleName, QWidget* parent = nullptr);
  Date day() const;
  void setDay(Date day);
};

}  // namespace steadyturn
