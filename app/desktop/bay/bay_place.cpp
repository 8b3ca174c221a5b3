#include "bay_place.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QSettings>
#include <QStackedWidget>
#include <QTableView>
#include <utility>

#include "adapter_line.h"
#include "bay_words.h"
#include "fastener_card.h"
#include "fastener_panel.h"
#include "job_panel.h"
#include "message_line.h"
#include "open_job_panel.h"
#include "probability_delegate.h"
#include "search_field.h"
#include "text.h"
#include "thread_page.h"
#include "tightening_line.h"

namespace steadyturn {

BayPlace::BayPlace(OpenShop& shop, QWidget* parent)
    : QWidget(parent), model_(shop), right_(new QStackedWidget(this)), message_(new MessageLine(this)) {
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
  addPages();
  auto* column = new QVBoxLayout;
  column->addWidget(message_);
  column->addWidget(right_, 1);
  row->addLayout(column, 1);
  connect(&model_, &BayModel::foundChanged, this, &BayPlace::showFound);
  connect(&model_, &BayModel::fastenerChanged, this, &BayPlace::showFastener);
  connect(&model_, &BayModel::choiceChanged, this, &BayPlace::showChoice);
  connect(&model_, &BayModel::troubled, message_, &MessageLine::sayProblems);
  connect(&model_, &BayModel::sheetChanged, this, &BayPlace::showSheet);
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
  jobs_ = new JobPanel(model_, finder);
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
  auto* adding = new QPushButton(tr("Add a faste&ner"), finder);
  auto* foot = new QHBoxLayout;
  foot->addWidget(count_, 1);
  foot->addWidget(adding);
  column->addWidget(label);
  column->addWidget(search_);
  column->addWidget(list_, 1);
  column->addLayout(foot);
  column->addWidget(jobs_);
  connect(adding, &QPushButton::clicked, this, [this] {
    showPage(EntryPage);
    entry_->begin(tightening_->by()->text());
  });
  connect(jobs_, &JobPanel::openWanted, this, [this] {
    showPage(OpenJobPage);
    opening_->begin(model_.services(), tightening_->by()->text());
  });
  connect(jobs_, &JobPanel::told, this, [this](Tone tone, const QString& text) { message_->say(tone, text); });
  connect(jobs_, &JobPanel::troubled, this, [this](const Problems& problems) { message_->sayProblems(problems); });
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
  auto* change = new QPushButton(tr("Chan&ge this specification"), sheet);
  column->addWidget(card_);
  column->addWidget(warnings_);
  column->addWidget(adapter_);
  column->addWidget(makeWrenches(), 1);
  column->addWidget(tightening_);
  auto* last = new QHBoxLayout;
  last->addWidget(caution, 1);
  auto* judge = new QPushButton(tr("J&udge its thread"), sheet);
  last->addWidget(judge);
  last->addWidget(change);
  connect(judge, &QPushButton::clicked, this, [this] {
    showPage(ThreadPagePlace);
    thread_->begin(*model_.fastener());
  });
  column->addLayout(last);
  connect(change, &QPushButton::clicked, this, [this] {
    showPage(EntryPage);
    entry_->beginRevision(*model_.fastener(), tightening_->by()->text());
  });
  connect(adapter_, &AdapterLine::measuring, this, [this](bool now) { refused_->setVisible(!now); });
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
  // Neither when the same words are looked up again because a fastener changed.
  const QString words = search_->text().trimmed();
  const bool other = words != std::exchange(foundFor_, words);
  if (found > 0 && other && !words.isEmpty()) list_->setCurrentIndex(model_.found().index(0));
  if (std::exchange(entering_, false)) toList();
}

void BayPlace::toList() {
  if (!list_->currentIndex().isValid()) list_->setCurrentIndex(model_.found().index(0));
  list_->setFocus(Qt::OtherFocusReason);
}

void BayPlace::addPages() {
  entry_ = new FastenerPanel([this](const Fastener& fastener) { return model_.questionsAbout(fastener); }, right_);
  opening_ = new OpenJobPanel(right_);
  right_->addWidget(entry_);
  right_->addWidget(opening_);
  thread_ = new ThreadPage(right_);
  right_->addWidget(thread_);
  const auto back = [this] {
    showPage(model_.fastener() ? SheetPage : HintPage);
    arrive();
  };
  connect(entry_, &FastenerPanel::cancelled, this, back);
  connect(opening_, &OpenJobPanel::cancelled, this, back);
  connect(thread_, &ThreadPage::left, this, back);
  connect(entry_, &FastenerPanel::wanted, this,
          [this](const Fastener& fastener, const std::optional<std::string>& reason) {
            const auto saved = model_.save(fastener, reason);
            if (!saved) return entry_->sayProblems(saved.error());
            showPage(SheetPage);
            message_->say(
                Tone::Good,
                tr("On record: %1. It is released when a second person approves it.").arg(fromText(fastener.id)));
          });
  connect(opening_, &OpenJobPanel::wanted, this, [this](JobDraft draft) {
    draft.date = model_.today();
    if (const auto opened = model_.openJob(draft); !opened) return message_->sayProblems(opened.error());
    showPage(model_.fastener() ? SheetPage : HintPage);
    jobs_->nextLine();
  });
}

// What there is to say is said on the page that is shown.
void BayPlace::showPage(int page) {
  right_->setCurrentIndex(page);
  message_->clear();
}

void BayPlace::showSheet() {
  const auto& sheet = model_.sheet();
  if (sheet) tightening_->showJob(fromText(sheet->job.id), fromText(sheet->job.vehicle));
}

void BayPlace::approve() {
  const QString by = tightening_->by()->text();
  if (by.trimmed().isEmpty()) {
    tightening_->by()->setFocus(Qt::OtherFocusReason);
    return message_->say(Tone::Caution, tr("Who approves it? Type the name under By, then mark it again."));
  }
  const auto approved = model_.approve(by);
  if (!approved) return message_->sayProblems(approved.error());
  message_->say(Tone::Good, tr("Released: approved by %1.").arg(fromText(approved->approvedBy)));
}

void BayPlace::showFastener() {
  showPage(SheetPage);
  warnings_->clear();
  card_->display(*model_.fastener());
  tightening_->showFastener(*model_.fastener());
  tightening_->showOption(std::nullopt);
}

void BayPlace::showChoice() {
  QStringList words;
  for (const std::string& warning : model_.warnings()) words << fromText(warning);
  if (words.isEmpty()) {
    warnings_->clear();
  } else {
    std::vector<MessageLine::Action> actions;
    if (!model_.fastener()->released()) actions.push_back({tr("Mar&k as approved"), [this] { approve(); }});
    warnings_->say(Tone::Caution, words.join(QLatin1Char('\n')), std::move(actions));
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
  model_.setBy(tightening_->typed().by);
  const Result<Tightening> recorded = model_.record(*option, tightening_->typed());
  if (!recorded) return message_->sayProblems(recorded.error());
  QSettings().setValue(QStringLiteral("bay/by"), tightening_->typed().by);
  const QString done = tr("On record: %1 with %2 set to %3, job %4.")
                           .arg(fromText(model_.fastener()->component), fromText(recorded->tool),
                                torqueText(recorded->settingTorque()), fromText(recorded->job));
  tightening_->readyForNext();
  if (model_.sheet() && recorded->job == model_.sheet()->job.id) {
    jobs_->nextLine();
  } else {
    arrive();
  }
  message_->say(Tone::Good, done);
}

}  // namespace steadyturn
