#include "bay_place.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QListView>
#include <QSettings>
#include <QStackedWidget>
#include <QTableView>
#include <utility>

#include "adapter_line.h"
#include "fastener_card.h"
#include "message_line.h"
#include "probability_delegate.h"
#include "search_field.h"
#include "text.h"
#include "tightening_line.h"

namespace steadyturn {

BayPlace::BayPlace(OpenShop& shop, QWidget* parent)
    : QWidget(parent), model_(shop), right_(new QStackedWidget(this)) {
  auto* row = new QHBoxLayout(this);
  row->setSpacing(16);
  row->addWidget(makeFinder());
  auto* hint = new QLabel(tr("Find the fastener on the left: any part of its name, assembly, thread or mark.\n\n"
                             "Its torque, its limits and the wrenches to take then stand here."),
                          right_);
  hint->setAlignment(Qt::AlignCenter);
  hint->setWordWrap(true);
  right_->addWidget(hint);
  right_->addWidget(makeSheet());
  row->addWidget(right_, 1);
  connect(&model_, &BayModel::foundChanged, this, &BayPlace::showFound);
  connect(&model_, &BayModel::fastenerChanged, this, &BayPlace::showFastener);
  connect(&model_, &BayModel::choiceChanged, this, &BayPlace::showChoice);
  connect(&model_, &BayModel::troubled, message_, &MessageLine::sayProblems);
  connect(&model_, &BayModel::workingChanged, this, [this](bool working) {
    if (working) wrenches_->setText(tr("Working out which wrench lands in the window …"));
  });
  tightening_->by()->setText(QSettings().value(QStringLiteral("bay/by")).toString());
}

QWidget* BayPlace::makeFinder() {
  auto* finder = new QWidget(this);
  finder->setFixedWidth(304);
  auto* column = new QVBoxLayout(finder);
  column->setContentsMargins(0, 0, 0, 0);
  search_ = new SearchField(tr("Find a fastener"), finder);
  auto* label = new QLabel(tr("&Find a fastener"), finder);
  label->setBuddy(search_);
  list_ = new QListView(finder);
  list_->setModel(&model_.found());
  list_->setItemDelegate(new FastenerDelegate(list_));
  list_->setAccessibleName(tr("Fasteners found"));
  list_->setUniformItemSizes(true);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  list_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  search_->setList(list_);
  count_ = new QLabel(finder);
  column->addWidget(label);
  column->addWidget(search_);
  column->addWidget(list_, 1);
  column->addWidget(count_);
  connect(search_, &QLineEdit::textChanged, &model_, &BayModel::find);
  connect(search_, &QLineEdit::returnPressed, this, [this] {
    if (!list_->currentIndex().isValid()) list_->setCurrentIndex(model_.found().index(0));
    list_->setFocus(Qt::OtherFocusReason);
  });
  connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& current) {
    if (const Fastener* fastener = model_.found().at(current.row())) model_.choose(*fastener);
  });
  connect(list_, &QListView::activated, this, [this] {
    if (model_.options().rowCount() > 0) options_->setFocus(Qt::OtherFocusReason);
  });
  return finder;
}

QWidget* BayPlace::makeSheet() {
  auto* sheet = new QWidget(right_);
  auto* column = new QVBoxLayout(sheet);
  column->setContentsMargins(0, 0, 0, 0);
  card_ = new FastenerCard(sheet);
  message_ = new MessageLine(sheet);
  warnings_ = new MessageLine(sheet);
  warnings_->setLasting();
  adapter_ = new AdapterLine(sheet);
  tightening_ = new TighteningLine(model_.today(), sheet);
  auto* caution =
      new QLabel(tr("The vehicle maker's service data come first. Set the wrench, pull steadily, stop at the click; "
                    "look at the seat, don't infer it."),
                 sheet);
  caution->setWordWrap(true);
  caution->setForegroundRole(QPalette::PlaceholderText);
  column->addWidget(card_);
  column->addWidget(message_);
  column->addWidget(warnings_);
  column->addWidget(adapter_);
  column->addWidget(makeWrenches(), 1);
  column->addWidget(tightening_);
  column->addWidget(caution);
  connect(adapter_, &AdapterLine::changed, &model_, &BayModel::setAdapter);
  connect(tightening_, &TighteningLine::recordWanted, this, &BayPlace::record);
  return sheet;
}

QWidget* BayPlace::makeWrenches() {
  auto* block = new QWidget(right_);
  auto* column = new QVBoxLayout(block);
  column->setContentsMargins(0, 0, 0, 0);
  wrenches_ = new QLabel(block);
  options_ = new QTableView(block);
  options_->setModel(&model_.options());
  dressTable(*options_, tr("Wrenches to take, best first"));
  options_->setItemDelegateForColumn(OptionsTable::WithinColumn, new ProbabilityDelegate(options_));
  setColumns(*options_, {8, 13, 17, 10, 10, 13, 17, 0});
  options_->setMinimumHeight(110);
  refused_ = new QTableView(block);
  refused_->setModel(&model_.refused());
  dressTable(*refused_, tr("Wrenches left out, and why"));
  setColumns(*refused_, {9, 0});
  refused_->setMinimumHeight(84);
  column->addWidget(wrenches_);
  column->addWidget(options_, 3);
  column->addWidget(refused_, 2);
  connect(options_->selectionModel(), &QItemSelectionModel::currentChanged, this, &BayPlace::showOption);
  connect(options_, &QTableView::activated, this, [this] { tightening_->job()->setFocus(Qt::TabFocusReason); });
  return block;
}

void BayPlace::arrive() {
  search_->setFocus(Qt::TabFocusReason);
  search_->selectAll();
}

void BayPlace::showFound() {
  const int found = model_.found().rowCount();
  count_->setText(found == 0 ? tr("Nothing found. Try fewer letters.") : tr("%n found", nullptr, found));
  // Looking is choosing: the best find is shown while typing goes on, but nothing is chosen before something was
  // typed.
  if (found > 0 && !search_->text().trimmed().isEmpty()) list_->setCurrentIndex(model_.found().index(0));
}

void BayPlace::showFastener() {
  right_->setCurrentIndex(1);
  message_->clear();
  warnings_->clear();
  card_->display(*model_.fastener());
  tightening_->showSeatCheck(fromText(model_.fastener()->seatCheck));
  tightening_->showOption(std::nullopt);
}

void BayPlace::showChoice() {
  QStringList words;
  for (const std::string& warning : model_.warnings()) words << fromText(warning);
  if (words.isEmpty()) {
    warnings_->clear();
  } else {
    warnings_->say(Tone::Caution, words.join(QLatin1Char('\n')));
  }
  const int options = model_.options().rowCount();
  wrenches_->setText(options > 0 ? tr("Wrenches to take today, best first")
                                 : tr("No wrench in the cabinet will do today. Why each is left out:"));
  if (options > 0) options_->setCurrentIndex(model_.options().index(0, 0));
  showOption();
  chooseScanned();
}

bool BayPlace::takeTool(const QString& tool) {
  if (!model_.fastener()) return false;
  scanned_ = tool;
  if (!model_.working()) chooseScanned();
  return true;
}

void BayPlace::chooseScanned() {
  if (scanned_.isEmpty()) return;
  const QString tool = std::exchange(scanned_, {});
  const int row = model_.options().rowOf(toText(tool));
  if (row < 0) {
    const QString why = model_.refused().whyNot(toText(tool));
    return message_->say(Tone::Bad, why.isEmpty() ? tr("%1 is not for this fastener.").arg(tool)
                                                  : tr("Not %1 here: %2.").arg(tool, why));
  }
  message_->clear();
  options_->setCurrentIndex(model_.options().index(row, 0));
  tightening_->job()->setFocus(Qt::TabFocusReason);
}

std::optional<Option> BayPlace::selectedOption() {
  const Option* option = model_.options().at(options_->currentIndex().row());
  return option ? std::optional(*option) : std::nullopt;
}

void BayPlace::showOption() {
  const std::optional<Option> option = selectedOption();
  tightening_->showOption(option);
  if (model_.fastener()) card_->showDelivered(*model_.fastener(), option);
}

void BayPlace::record() {
  const std::optional<Option> option = selectedOption();
  if (!option) return;
  const Result<Tightening> recorded = model_.record(*option, tightening_->typed());
  if (!recorded) return message_->sayProblems(recorded.error());
  QSettings().setValue(QStringLiteral("bay/by"), tightening_->typed().by);
  message_->say(Tone::Good, tr("On record: %1 with %2 set to %3, job %4.")
                                .arg(fromText(model_.fastener()->component), fromText(recorded->tool),
                                     torqueText(recorded->settingTorque()), fromText(recorded->job)));
  tightening_->readyForNext();
  arrive();
}

}  // namespace steadyturn
