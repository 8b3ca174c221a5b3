#include "date_field.h"

#include "text.h"

namespace steadyturn {

DateField::DateField(const QString& accessibleName, QWidget* parent) : QDateEdit(parent) {
  setDisplayFormat(QStringLiteral("yyyy-MM-dd"));
  setCalendarPopup(true);
  setAccessibleName(accessibleName);
  setMinimumDate(QDate(1950, 1, 1));
  setMaximumDate(QDate(2150, 12, 31));
}

Date DateField::day() const { return fromQDate(date()); }

void DateField::setDay(Date day) { setDate(toQDate(day)); }

}  // namespace steadyturn
