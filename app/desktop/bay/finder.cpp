#include "finder.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <utility>

#include "act_guard.h"
#include "search_field.h"

namespace steadyturn {

Finder::Finder(BayModel& model, QWidget* parent)
    : QWidget(parent),
      model_(model),
      search_(new SearchField(tr("Find a fastener"), this)),
      count_(new QLabel(this)),
      list_(new QListView(this)),
      adding_(new QPushButton(tr("Add a faste&ner"), this)),
      picker_(new QPushButton(tr("Put it on the &list"), this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  auto* label = new QLabel(tr("&Find a fastener"), this);
  label->setBuddy(search_);
  list_->setModel(&model_.found());
  list_->setItemDelegate(new FastenerDelegate(list_));
  list_->setAccessibleName(tr("Fasteners found"));
  list_->setUniformItemSizes(true);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  list_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  search_->setList(list_);
  auto* foot = new QHBoxLayout;
  foot->addWidget(count_, 1);
  foot->addWidget(adding_);
  foot->addWidget(picker_);
  column->addWidget(label);
  column->addWidget(search_);
  column->addWidget(list_, 1);
  column->addLayout(foot);
  connect(&model_, &BayModel::foundChanged, this, &Finder::showFound);
  picker_->hide();
  needs(*adding_, Act::EnterFastener);
  needs(*picker_, Act::SetService);
  connect(adding_, &QPushButton::clicked, this, &Finder::addWanted);
  connect(picker_, &QPushButton::clicked, this, [this] { enter(list_->currentIndex().row()); });
  connect(search_, &QLineEdit::textChanged, &model_, &BayModel::find);
  connect(search_, &QLineEdit::returnPressed, this, [this] {
    // A scanner's Enter comes before the search is through.
    if (model_.finding()) {
      entering_ = true;
    } else {
      toList();
    }
  });
  connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& current) {
    const Fastener* fastener = model_.found().at(current.row());
    if (fastener && !picking_) model_.choose(*fastener);
    picker_->setEnabled(fastener != nullptr);
  });
  connect(list_, &QListView::activated, this, [this](const QModelIndex& entered) { enter(entered.row()); });
}

void Finder::takeFocus() {
  search_->setFocus(Qt::TabFocusReason);
  search_->selectAll();
}

void Finder::setPicking(bool picking) {
  if (picking == picking_) return;
  picking_ = picking;
  adding_->setVisible(!picking);
  picker_->setVisible(picking);
  picker_->setEnabled(list_->currentIndex().isValid());
  // What was picked last is not what the Bay shows: choosing it must be a change.
  if (!picking) list_->setCurrentIndex({});
}

void Finder::enter(int row) {
  if (!picking_) return void(emit chosen());
  if (const Fastener* fastener = model_.found().at(row)) emit picked(*fastener);
}

void Finder::toList() {
  if (!list_->currentIndex().isValid()) list_->setCurrentIndex(model_.found().index(0));
  list_->setFocus(Qt::OtherFocusReason);
}

void Finder::showFound() {
  const int found = model_.found().rowCount();
  picker_->setEnabled(list_->currentIndex().isValid());
  count_->setText(found == 0 ? tr("Nothing found. Try fewer letters.") : tr("%n found", nullptr, found));
  // Looking is choosing: the best find is shown while typing goes on, but nothing is chosen before something was
  // typed, nor when the same words are looked up again because a fastener changed.
  const QString words = search_->text().trimmed();
  const bool other = words != std::exchange(foundFor_, words);
  if (found > 0 && other && !words.isEmpty()) list_->setCurrentIndex(model_.found().index(0));
  if (std::exchange(entering_, false)) toList();
}

}  // namespace steadyturn
