#include "service_page.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QShortcut>
#include <QSignalBlocker>
#include <QTableView>
#include <algorithm>
#include <utility>

#include "act_guard.h"
#include "message_line.h"
#include "table_look.h"
#include "text.h"
#include "title.h"

namespace steadyturn {
namespace {

// "VB-01, VB-02, VB-03"
QString inOrder(const ServiceList& list) {
  QStringList marks;
  for (const std::string& mark : list.fasteners) marks << fromText(mark);
  return marks.join(QStringLiteral(", "));
}

}  // namespace

ServicePage::ServicePage(ServiceModel& model, QWidget* parent)
    : QWidget(parent),
      model_(model),
      names_(new QComboBox(this)),
      name_(new QLineEdit(this)),
      lines_(new QTableView(this)),
      renamed_(new QLabel(this)),
      count_(new QLabel(this)),
      reason_(new MessageLine(this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  auto* title = new QLabel(tr("Service lists"), this);
  makeTitle(*title);
  auto* hint =
      new QLabel(tr("A job of this kind works its list down in the order that stands here. Find the fasteners "
                    "on the left: Enter or a double click puts one on the list."),
                 this);
  hint->setWordWrap(true);
  hint->setForegroundRole(QPalette::PlaceholderText);
  reason_->setLasting();
  auto* form = new QFormLayout;
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  names_->setAccessibleName(tr("List to change"));
  names_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  name_->setAccessibleName(tr("Name of the list"));
  name_->setPlaceholderText(tr("what the service is called, with the vehicle it is for"));
  renamed_->setWordWrap(true);
  form->addRow(tr("List to chan&ge"), names_);
  form->addRow(tr("N&ame of the list"), name_);
  column->addWidget(title);
  column->addWidget(hint);
  column->addWidget(reason_);
  column->addLayout(form);
  column->addWidget(renamed_);
  column->addWidget(makeOrder(), 1);
  auto* foot = new QHBoxLayout;
  save_ = new QPushButton(tr("Save the lis&t"), this);
  giveUp_ = new QPushButton(tr("Giv&e up changes"), this);
  auto* back = new QPushButton(tr("Ba&ck"), this);
  foot->addWidget(save_);
  foot->addWidget(giveUp_);
  foot->addWidget(back);
  foot->addStretch(1);
  column->addLayout(foot);
  for (QWidget* changing : std::initializer_list<QWidget*>{name_, up_, down_, remove_, save_, giveUp_})
    needs(*changing, Act::SetService);
  connect(names_, &QComboBox::currentIndexChanged, this, &ServicePage::take);
  connect(name_, &QLineEdit::textEdited, this, [this](const QString& typed) {
    model_.setName(toText(typed.trimmed()));
    changed(row());
  });
  connect(name_, &QLineEdit::returnPressed, this, &ServicePage::findWanted);
  connect(save_, &QPushButton::clicked, this, &ServicePage::save);
  connect(giveUp_, &QPushButton::clicked, this, &ServicePage::giveUp);
  connect(back, &QPushButton::clicked, this, &ServicePage::left);
  connect(&model_, &ServiceModel::peopleChanged, this, &ServicePage::showReason);
}

QWidget* ServicePage::makeOrder() {
  auto* block = new QWidget(this);
  auto* column = new QVBoxLayout(block);
  column->setContentsMargins(0, 0, 0, 0);
  lines_->setModel(&rows_);
  dressTable(*lines_, tr("Fasteners of the list, in order"));
  setColumns(*lines_, {8, 12, 36, 0, 16});
  up_ = new QPushButton(tr("&Up"), block);
  down_ = new QPushButton(tr("&Down"), block);
  remove_ = new QPushButton(tr("&Remove"), block);
  up_->setToolTip(tr("Alt+Up in the list"));
  down_->setToolTip(tr("Alt+Down in the list"));
  remove_->setToolTip(tr("Delete in the list"));
  auto* foot = new QHBoxLayout;
  foot->addWidget(count_, 1);
  foot->addWidget(up_);
  foot->addWidget(down_);
  foot->addWidget(remove_);
  column->addWidget(lines_, 1);
  column->addLayout(foot);
  const auto key = [this](const QKeySequence& keys, QPushButton* button) {
    auto* shortcut = new QShortcut(keys, lines_, nullptr, nullptr, Qt::WidgetShortcut);
    connect(shortcut, &QShortcut::activated, button, [button] { button->click(); });
  };
  key(Qt::ALT | Qt::Key_Up, up_);
  key(Qt::ALT | Qt::Key_Down, down_);
  key(Qt::Key_Delete, remove_);
  connect(up_, &QPushButton::clicked, this, [this] { move(-1); });
  connect(down_, &QPushButton::clicked, this, [this] { move(1); });
  connect(remove_, &QPushButton::clicked, this, &ServicePage::remove);
  connect(lines_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this] {
    up_->setEnabled(row() > 0);
    down_->setEnabled(row() >= 0 && row() + 1 < rows_.rowCount());
    remove_->setEnabled(row() >= 0);
  });
  return block;
}

int ServicePage::row() const { return lines_->currentIndex().row(); }

void ServicePage::begin() {
  const auto read = model_.read();
  showReason();
  changed(std::max(0, row()));
  if (!read) emit troubled(read.error());
  if (!model_.whyNot().isEmpty()) return names_->setFocus(Qt::TabFocusReason);
  if (model_.list().name.empty()) return name_->setFocus(Qt::TabFocusReason);
  lines_->setFocus(Qt::TabFocusReason);
}

void ServicePage::showReason() {
  const QString reason = model_.whyNot();
  if (reason.isEmpty()) return reason_->clear();
  reason_->say(Tone::Info, tr("The lists can be looked at. %1").arg(reason));
}

void ServicePage::showNames() {
  const QSignalBlocker quiet(names_);
  const auto item = [this](const std::string& name, const QString& words) {
    names_->addItem(model_.unsaved(name) ? tr("%1 (not saved yet)").arg(words) : words, fromText(name));
  };
  names_->clear();
  item({}, tr("a new list"));
  for (const std::string& name : model_.names()) item(name, fromText(name));
  names_->setCurrentIndex(std::max(0, names_->findData(fromText(model_.taken()))));
}

void ServicePage::showList(int row) {
  const ServiceList list = model_.list();
  const QString name = fromText(list.name);
  if (name_->text().trimmed() != name) name_->setText(name);
  const bool other = !model_.taken().empty() && list.name != model_.taken();
  renamed_->setVisible(other);
  renamed_->setText(
      tr("Under another name it is saved as a list of its own; “%1” stays as it is.").arg(fromText(model_.taken())));
  rows_.show(model_.fasteners());
  const bool unsaved = model_.unsaved(model_.taken());
  const QString count = rows_.rowCount() == 0   ? tr("No fastener on it yet")
                        : rows_.rowCount() == 1 ? tr("1 fastener")
                                                : tr("%1 fasteners").arg(rows_.rowCount());
  count_->setText(unsaved ? tr("%1; not saved yet, kept on this machine").arg(count) : count);
  save_->setEnabled(unsaved);
  giveUp_->setEnabled(unsaved);
  for (QPushButton* button : {up_, down_, remove_}) button->setEnabled(false);
  if (rows_.rowCount() > 0) lines_->setCurrentIndex(rows_.index(std::clamp(row, 0, rows_.rowCount() - 1), 0));
}

void ServicePage::changed(int row) {
  asked_ = false;
  emit wentOn();
  showNames();
  showList(row);
}

void ServicePage::take() {
  model_.take(toText(names_->currentData().toString()));
  changed(0);
}

void ServicePage::add(const Fastener& fastener) {
  if (const QString reason = model_.whyNot(); !reason.isEmpty()) return void(emit told(Tone::Bad, reason));
  const int before = rows_.rowCount();
  const int at = model_.add(fastener.id);
  changed(at);
  const QString what = fromText(fastener.component);
  if (at < before)
    return void(emit told(Tone::Caution, tr("%1 is on the list already, line %2.").arg(what).arg(at + 1)));
  emit told(Tone::Info, tr("On the list: %1, line %2.").arg(what).arg(at + 1));
}

void ServicePage::move(int by) { changed(model_.move(row(), by)); }

void ServicePage::remove() {
  const int gone = row();
  model_.remove(gone);
  changed(gone);
}

void ServicePage::giveUp() {
  model_.giveUp();
  changed(0);
  emit gaveUp();
}

void ServicePage::bringBack() {
  model_.bringBack();
  changed(0);
}

void ServicePage::save() {
  if (const auto there = model_.inTheWay(); there && !std::exchange(asked_, true)) {
    return void(emit told(Tone::Caution, tr("“%1” is on record with another list: %2. Save again to put yours in its "
                                            "place.")
                                             .arg(fromText(there->name), inOrder(*there))));
  }
  const ServiceList list = model_.list();
  if (const auto saved = model_.save(); !saved) return void(emit troubled(saved.error()));
  changed(row());
  emit told(Tone::Good, tr("Saved: “%1”, %2. Jobs opened from now on work it down; sheets that are open stay as they "
                           "are.")
                            .arg(fromText(list.name), inOrder(list)));
}

void ServicePage::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return void(emit left());
  QWidget::keyPressEvent(event);
}

}  // namespace steadyturn
