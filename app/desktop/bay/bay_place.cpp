#include "bay_place.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QStackedWidget>
#include <QTableView>
#include <utility>

#include "act_guard.h"
#include "adapter_line.h"
#include "fastener_card.h"
#include "fastener_panel.h"
#include "finder.h"
#include "job_panel.h"
#include "message_line.h"
#include "open_job_panel.h"
#include "probability_delegate.h"
#include "service_page.h"
#include "text.h"
#include "thread_page.h"
#include "tightening_line.h"

namespace steadyturn {

BayPlace::BayPlace(OpenShop& shop, QWidget* parent)
    : QWidget(parent), model_(shop), right_(new QStackedWidget(this)), message_(new MessageLine(this)) {
  auto* row = new QHBoxLayout(this);
  row->setSpacing(16);
  row->addWidget(makeLeft());
  auto* hint = new QLabel(tr("Find the fastener on the left: any part of its name, assembly, thread or mark.\n\n"
                             "Its torque, its limits and the wrenches to take then stand here."),
                          right_);
  hint->setAlignment(Qt::AlignCenter);
  hint->setWordWrap(true);
  right_->addWidget(hint);
  right_->addWidget(makeSheet());
  addPages();
  addServices(shop);
  auto* column = new QVBoxLayout;
  column->addWidget(message_);
  column->addWidget(right_, 1);
  row->addLayout(column, 1);
  connect(&model_, &BayModel::fastenerChanged, this, &BayPlace::showFastener);
  connect(&model_, &BayModel::choiceChanged, this, &BayPlace::showChoice);
  connect(&model_, &BayModel::troubled, message_, &MessageLine::sayProblems);
  connect(&model_, &BayModel::sheetChanged, this, &BayPlace::showSheet);
  connect(&model_, &BayModel::workingChanged, this, [this](bool working) {
    if (working) wrenches_->setText(tr("Working out which wrench lands in the window …"));
  });
  tightening_->by()->setText(QSettings().value(QStringLiteral("bay/by")).toString());
}

QWidget* BayPlace::makeLeft() {
  auto* left = new QWidget(this);
  left->setFixedWidth(304);
  auto* column = new QVBoxLayout(left);
  column->setContentsMargins(0, 0, 0, 0);
  finder_ = new Finder(model_, left);
  jobs_ = new JobPanel(model_, left);
  column->addWidget(finder_, 1);
  column->addWidget(jobs_);
  connect(finder_, &Finder::chosen, this, [this] {
    if (model_.options().rowCount() > 0) options_->setFocus(Qt::OtherFocusReason);
  });
  connect(finder_, &Finder::addWanted, this, [this] {
    showPage(EntryPage);
    entry_->begin(tightening_->by()->text());
  });
  connect(jobs_, &JobPanel::openWanted, this, [this] {
    showPage(OpenJobPage);
    opening_->begin(model_.services(), tightening_->by()->text());
  });
  connect(jobs_, &JobPanel::told, message_, [this](Tone tone, const QString& text) { message_->say(tone, text); });
  connect(jobs_, &JobPanel::troubled, message_, &MessageLine::sayProblems);
  return left;
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
  needs(*change, Act::EnterFastener);
  connect(judge, &QPushButton::clicked, this, [this] {
    showPage(JudgePage);
    thread_->begin(*model_.fastener());
  });
  column->addLayout(last);
  connect(change, &QPushButton::clicked, this, [this] {
    showPage(EntryPage);
    entry_->beginRevision(*model_.fastener(), tightening_->by()->text());
  });
  connect(card_, &FastenerCard::limitWanted, this, [this] {
    showPage(EntryPage);
    entry_->beginLimit(*model_.fastener(), tightening_->by()->text());
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

void BayPlace::arrive() { finder_->takeFocus(); }

void BayPlace::addPages() {
  entry_ = new FastenerPanel([this](const Fastener& fastener) { return model_.questionsAbout(fastener); }, right_);
  opening_ = new OpenJobPanel(right_);
  right_->addWidget(entry_);
  right_->addWidget(opening_);
  thread_ = new ThreadPage(right_);
  right_->addWidget(thread_);
  connect(entry_, &FastenerPanel::cancelled, this, &BayPlace::back);
  connect(opening_, &OpenJobPanel::cancelled, this, &BayPlace::back);
  connect(thread_, &ThreadPage::left, this, &BayPlace::back);
  connect(entry_, &FastenerPanel::wanted, this,
          [this](const Fastener& fastener, const std::optional<std::string>& reason) {
            const auto saved = model_.save(fastener, reason);
            if (!saved) return entry_->sayProblems(saved.error());
            entry_->done();
            showPage(SheetPage);
            message_->say(
                Tone::Good,
                tr("On record: %1. It is released when a second person approves it.").arg(fromText(fastener.id)));
          });
  connect(opening_, &OpenJobPanel::wanted, this, [this](JobDraft draft) {
    draft.date = model_.today();
    if (const auto opened = model_.openJob(draft); !opened) return message_->sayProblems(opened.error());
    opening_->done();
    showPage(model_.fastener() ? SheetPage : HintPage);
    jobs_->nextLine();
  });
}

void BayPlace::addServices(OpenShop& shop) {
  services_ = new ServicePage(*new ServiceModel(shop, this), right_);
  right_->addWidget(services_);
  connect(jobs_, &JobPanel::servicesWanted, this, [this] {
    showPage(ServicesPage);
    services_->begin();
  });
  connect(finder_, &Finder::picked, this, [this](const Fastener& fastener) {
    services_->add(fastener);
    finder_->takeFocus();
  });
  connect(services_, &ServicePage::findWanted, finder_, &Finder::takeFocus);
  connect(services_, &ServicePage::left, this, &BayPlace::back);
  connect(services_, &ServicePage::told, message_,
          [this](Tone tone, const QString& text) { message_->say(tone, text); });
  connect(services_, &ServicePage::wentOn, message_, &MessageLine::clear);
  connect(services_, &ServicePage::gaveUp, this, [this] {
    message_->say(Tone::Info, tr("What was typed and not saved is given up."),
                  {{tr("Bring it bac&k"), [this] { services_->bringBack(); }}});
  });
  connect(services_, &ServicePage::troubled, message_, &MessageLine::sayProblems);
}

void BayPlace::back() {
  showPage(model_.fastener() ? SheetPage : HintPage);
  arrive();
}

// What there is to say is said on the page that is shown.
void BayPlace::showPage(int page) {
  right_->setCurrentIndex(page);
  finder_->setPicking(page == ServicesPage);
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
    warnings_->say(Tone::Caution, words.join(QLatin1Char('\n')), actions);
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
