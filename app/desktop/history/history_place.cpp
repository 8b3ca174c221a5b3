#include "history_place.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QStackedWidget>
#include <utility>

#include "foresight_page.h"
#include "message_line.h"
#include "picker.h"
#include "recall_page.h"
#include "small_charts.h"
#include "story_page.h"
#include "text.h"

namespace steadyturn {

HistoryPlace::HistoryPlace(OpenShop& shop, QWidget* parent)
    : QWidget(parent),
      model_(shop),
      fleetWords_(new QLabel(this)),
      message_(new MessageLine(this)),
      pages_(new QStackedWidget(this)),
      small_(new SmallCharts(this)),
      story_(new StoryPage(model_, message_, this)),
      recall_(new RecallPage(shop, message_, this)),
      foresight_(new ForesightPage(shop, message_, this)) {
  auto* column = new QVBoxLayout(this);
  column->addLayout(makeHead());
  column->addWidget(message_);
  auto* many = new QWidget(this);
  auto* manyColumn = new QVBoxLayout(many);
  manyColumn->setContentsMargins(0, 0, 0, 0);
  fleetWords_->setWordWrap(true);
  fleetWords_->setForegroundRole(QPalette::PlaceholderText);
  manyColumn->addWidget(fleetWords_);
  manyColumn->addWidget(small_, 1);
  pages_->addWidget(many);
  pages_->addWidget(story_);
  pages_->addWidget(recall_);
  pages_->addWidget(foresight_);
  column->addWidget(pages_, 1);

  connect(&model_, &HistoryModel::toolsChanged, this, &HistoryPlace::offerTools);
  connect(&model_, &HistoryModel::told, this, &HistoryPlace::tell);
  connect(&model_, &HistoryModel::refused, message_, &MessageLine::sayProblems);
  connect(&model_, &HistoryModel::workingChanged, working_, &QLabel::setVisible);
  connect(&model_, &HistoryModel::written, message_, [this](const IssuedFile& file) { sayIssued(*message_, file); });
  connect(story_, &StoryPage::selectionChanged, this, &HistoryPlace::allowActions);
  connect(small_, &SmallCharts::opened, this, &HistoryPlace::openSmall);
  offerTools();
  tell();
}

HistoryPlace::~HistoryPlace() = default;

QLayout* HistoryPlace::makeHead() {
  tool_ = new Picker(tr("Tool"), tr("type its mark or description"), this);
  target_ = new QComboBox(this);
  target_->setAccessibleName(tr("Set-point"));
  target_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  target_->setMinimumContentsLength(12);
  working_ = new QLabel(tr("Reading the records …"), this);
  working_->hide();
  auto* toolLabel = new QLabel(tr("&Tool"), this);
  toolLabel->setBuddy(tool_);
  auto* targetLabel = new QLabel(tr("Set-&point"), this);
  targetLabel->setBuddy(target_);
  fleet_ = new QPushButton(tr("A&ll tools"), this);
  interval_ = new QPushButton(tr("Chec&king interval"), this);
  interval_->setToolTip(tr("Whether earlier predictions held, and how long the checking interval may be"));
  doubt_ = new QPushButton(tr("Jobs in &doubt"), this);
  doubt_->setToolTip(tr("What the tool's newest failed check puts in doubt"));
  correct_ = new QPushButton(tr("C&orrect the selected check…"), this);
  check_ = new QPushButton(tr("Check at the &Bench"), this);
  auto* row = new QHBoxLayout;
  row->addWidget(toolLabel);
  row->addWidget(tool_, 2);
  row->addWidget(targetLabel);
  row->addWidget(target_);
  row->addWidget(working_);
  row->addStretch(1);
  row->addWidget(fleet_);
  row->addWidget(interval_);
  row->addWidget(doubt_);
  row->addWidget(correct_);
  row->addWidget(check_);
  connect(tool_, &Picker::picked, this, &HistoryPlace::open);
  connect(tool_, &Picker::unknown, this, [this](const QString& typed) {
    message_->say(Tone::Caution,
                  tr("No single tool fits “%1”. Type more of it, or pick one from the list.").arg(typed));
  });
  connect(target_, &QComboBox::activated, this, &HistoryPlace::takeTarget);
  connect(fleet_, &QPushButton::clicked, this, [this] {
    showFleet();
    small_->setFocus(Qt::OtherFocusReason);
  });
  connect(interval_, &QPushButton::clicked, this, &HistoryPlace::showForesight);
  connect(doubt_, &QPushButton::clicked, this, &HistoryPlace::showRecall);
  connect(check_, &QPushButton::clicked, this, [this] { emit checkWanted(fromText(model_.tool())); });
  connect(correct_, &QPushButton::clicked, this, [this] { emit correctionWanted(story_->selectedCheck()); });
  return row;
}

void HistoryPlace::offerTools() {
  const Result<std::vector<Tool>> tools = model_.tools();
  if (!tools) return message_->sayProblems(tools.error());
  std::vector<Picker::Item> items;
  for (const Tool& tool : *tools) {
    items.push_back({fromText(tool.id), fromText(tool.description) + QStringLiteral(", ") + rangeText(tool)});
  }
  tool_->setItems(std::move(items));
}

void HistoryPlace::open(const QString& tool) {
  message_->clear();
  tool_->pick(tool);
  model_.pick(toText(tool));
}

void HistoryPlace::showFleet() {
  message_->clear();
  tool_->pick({});
  model_.askFleet();
}

void HistoryPlace::showRecall() {
  message_->clear();
  pages_->setCurrentWidget(recall_);
  recall_->open(model_.tool());
  allowActions();
}

void HistoryPlace::showForesight() {
  message_->clear();
  std::optional<Tool> tool;
  if (!model_.tool().empty()) {
    if (const Result<Tool> found = model_.shop().tool(model_.tool())) tool = *found;
  }
  pages_->setCurrentWidget(foresight_);
  foresight_->open(tool ? &*tool : nullptr);
  allowActions();
}

void HistoryPlace::openRecall(const QString& tool) {
  open(tool);
  recallWanted_ = true;
  showRecall();
}

void HistoryPlace::arrive() {
  if (pages_->currentWidget() == recall_ || pages_->currentWidget() == foresight_) return;
  if (!model_.tool().empty()) return story_->takeFocus();
  if (model_.asked() != Asked::Fleet) model_.askFleet();
  tool_->setFocus(Qt::TabFocusReason);
}

void HistoryPlace::takeTarget(int index) {
  const std::vector<StatedTorque>& targets = model_.targets();
  const bool all = targets.size() > 1 && index == static_cast<int>(targets.size());
  if (all) return model_.askSetPoints();
  model_.pick(model_.tool(), targets[static_cast<std::size_t>(index)]);
}

void HistoryPlace::openSmall(int row) {
  const SmallStory& story = small_->stories()[static_cast<std::size_t>(row)];
  const Tool& tool = story.history.tool;
  message_->clear();
  tool_->pick(fromText(tool.id));
  if (story.history.points.empty()) return model_.pick(tool.id);
  model_.pick(tool.id, story.history.target);
}

void HistoryPlace::offerTargets() {
  const QSignalBlocker quiet(target_);
  target_->clear();
  for (const StatedTorque target : model_.targets()) {
    target_->addItem(torqueText(target));
    const auto& story = model_.story();
    if (story && target == story->data.target) target_->setCurrentIndex(target_->count() - 1);
  }
  if (target_->count() > 1) target_->addItem(tr("all side by side"));
  if (model_.asked() == Asked::SetPoints) target_->setCurrentIndex(target_->count() - 1);
  target_->setEnabled(target_->count() > 0);
}

void HistoryPlace::tell() {
  offerTargets();
  switch (model_.asked()) {
    case Asked::Story:
      story_->tell();
      if (!std::exchange(recallWanted_, false)) pages_->setCurrentWidget(story_);
      break;
    case Asked::SetPoints:
      tellSetPoints();
      pages_->setCurrentWidget(small_->parentWidget());
      break;
    case Asked::Nothing:
    case Asked::Fleet:
      tellFleet();
      pages_->setCurrentWidget(small_->parentWidget());
      break;
  }
  allowActions();
}

void HistoryPlace::tellFleet() {
  std::vector<SmallStory> stories;
  for (const FleetStory& one : model_.fleet()) {
    QString title = fromText(one.history.tool.id);
    if (!one.history.points.empty()) title += QStringLiteral(" · ") + torqueText(one.history.target);
    stories.push_back({.history = one.history, .title = title, .look = lookOf(one.standing)});
  }
  fleetWords_->setText(stories.empty()
                           ? tr("No tool is in use yet: add one in the Cabinet.")
                           : tr("Every tool in use at the set-point that decides, worst first, all on "
                                "one scale of time; the lines are "
                                "each tool's own limits. ● as found, ▲ as left, dotted: not by its own checks. "
                                "Enter opens one."));
  small_->show(std::move(stories));
}

void HistoryPlace::tellSetPoints() {
  std::vector<SmallStory> stories;
  for (const HistoryData& one : model_.setPoints()) {
    stories.push_back({.history = one, .title = torqueText(one.target), .look = {}});
  }
  fleetWords_->setText(tr("%1 at each of its set-points, all on one scale of time; the lines are its limits. ● as "
                          "found, ▲ as left. Enter opens one.")
                           .arg(fromText(model_.tool())));
  small_->show(std::move(stories));
  small_->setFocus(Qt::OtherFocusReason);
}

void HistoryPlace::allowActions() {
  const bool story = pages_->currentWidget() == story_;
  correct_->setEnabled(story && model_.mayCorrect(story_->selectedCheck()));
  check_->setEnabled(!model_.tool().empty());
  doubt_->setEnabled(!model_.tool().empty());
}

}  // namespace steadyturn
