#include "picker.h"

#include <QKeyEvent>
#include <QLineEdit>
#include <algorithm>

#include "label_code.h"
#include "text.h"

namespace steadyturn {
namespace {

constexpr std::size_t mostSuggested = 12;  // more than that is not read, but typed on

QString lineOf(const Picker::Item& item) {
  return item.label.isEmpty() ? item.id : item.id + QStringLiteral("  ·  ") + item.label;
}

}  // namespace

Picker::Picker(const QString& accessibleName, const QString& hint, QWidget* parent) : QComboBox(parent) {
  setEditable(true);
  setInsertPolicy(QComboBox::NoInsert);
  setAccessibleName(accessibleName);
  setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  setMinimumContentsLength(10);
  lineEdit()->setPlaceholderText(hint);
  lineEdit()->setAccessibleName(accessibleName);
  setCompleter(nullptr);  // its list is a window of its own, which takes the keys where no window manager is
  connect(this, &QComboBox::activated, this, [this] {
    settle();
    emit entered();
  });
  connect(lineEdit(), &QLineEdit::textEdited, this, &Picker::suggest);
  connect(lineEdit(), &QLineEdit::editingFinished, this, &Picker::settle);
}

void Picker::suggest(const QString& typed) {
  if (suggestions_.isNull()) {
    suggestions_ = new Suggestions(*this);
    connect(suggestions_, &Suggestions::clickedOn, this, &Picker::enter);
  }
  std::vector<Suggestion> fitting;
  const QString text = typed.trimmed();
  for (const Item& item : items_) {
    if (text.isEmpty() || fitting.size() == mostSuggested) break;
    if (lineOf(item).contains(text, Qt::CaseInsensitive)) fitting.push_back({item.id, lineOf(item)});
  }
  suggestions_->offer(fitting);
}

void Picker::enter(const QString& typed) {
  closeSuggestions();
  setEditText(typed);
  const bool known = !resolve(typed).isEmpty();
  settle();
  if (known) emit entered();
}

void Picker::closeSuggestions() {
  if (suggestions_) suggestions_->hide();
}

void Picker::keyPressEvent(QKeyEvent* event) {
  const bool listed = suggestions_ && suggestions_->isVisible();
  switch (event->key()) {
    case Qt::Key_Down:
    case Qt::Key_Up:
      if (!listed) break;
      return suggestions_->step(event->key() == Qt::Key_Down ? 1 : -1);
    case Qt::Key_Escape:
      if (!listed) break;
      return closeSuggestions();
    case Qt::Key_Return:
    case Qt::Key_Enter: {
      const QString chosen = listed ? suggestions_->chosen() : QString();
      return enter(chosen.isEmpty() ? currentText() : chosen);
    }
    default:
      break;
  }
  QComboBox::keyPressEvent(event);
}

void Picker::focusOutEvent(QFocusEvent* event) {
  closeSuggestions();
  QComboBox::focusOutEvent(event);
}

void Picker::setItems(std::vector<Item> items) {
  if (items == items_) return;
  items_ = std::move(items);
  const QString keep = picked_;
  const QSignalBlocker quiet(this);
  clear();
  for (const Item& item : items_) addItem(lineOf(item), item.id);
  pick(keep);
}

void Picker::pick(const QString& id) {
  const QSignalBlocker quiet(this);
  picked_ = id;
  showPicked();
}

void Picker::showPicked() {
  const int row = findData(picked_);
  if (row < 0) picked_.clear();
  setCurrentIndex(row);
  if (row < 0) clearEditText();
  lineEdit()->setCursorPosition(0);
}

QString Picker::resolve(const QString& typed) const {
  QString text = typed.trimmed();
  if (text.isEmpty()) return {};
  // A label's code, typed or pasted.
  if (const auto code = parseLabelCode(toText(text))) text = fromText(code->id);
  for (const Item& item : items_) {
    if (item.id.compare(text, Qt::CaseInsensitive) == 0 || lineOf(item) == text) return item.id;
  }
  QString only;
  for (const Item& item : items_) {
    if (!lineOf(item).contains(text, Qt::CaseInsensitive)) continue;
    if (!only.isEmpty()) return {};  // several fit: the person decides
    only = item.id;
  }
  return only;
}

void Picker::settle() {
  const QString typed = currentText();
  if (typed.trimmed().isEmpty() && picked_.isEmpty()) return;
  const QString id = resolve(typed);
  if (id.isEmpty()) {
    showPicked();
    if (!typed.trimmed().isEmpty()) emit unknown(typed.trimmed());
    return;
  }
  const bool changed = id != picked_;
  pick(id);
  if (changed) emit picked(id);
}

}  // namespace steadyturn
