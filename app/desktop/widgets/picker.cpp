#include "picker.h"

#include <QAbstractItemView>
#include <QCompleter>
#include <QLineEdit>
#include <algorithm>

namespace steadyturn {
namespace {

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
  completer()->setFilterMode(Qt::MatchContains);
  completer()->setCompletionMode(QCompleter::PopupCompletion);
  completer()->setCaseSensitivity(Qt::CaseInsensitive);
  completer()->setMaxVisibleItems(12);
  connect(this, &QComboBox::activated, this, [this] {
    settle();
    emit entered();
  });
  connect(lineEdit(), &QLineEdit::editingFinished, this, [this] {
    // Where no window manager is, the list that opens takes the focus: then typing is not over yet.
    if (!completer()->popup()->isVisible()) settle();
  });
  connect(lineEdit(), &QLineEdit::returnPressed, this, [this] {
    const bool known = !resolve(currentText()).isEmpty();
    settle();
    if (known) emit entered();
  });
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
  const QString text = typed.trimmed();
  if (text.isEmpty()) return {};
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
