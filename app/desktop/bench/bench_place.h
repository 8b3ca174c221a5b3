// The Bench: record a check of one tool against a reference standard.
#pragma once

#include <QWidget>

#include "bench_model.h"
#include "setup_model.h"
#include "tester_port.h"

class QLabel;
class QStackedWidget;

namespace steadyturn {

class BenchForm;
class CheckFoot;
class CorrectionLine;
class MessageLine;
class ReadingsGrid;
class SetupPage;
class TesterPage;

class BenchPlace : public QWidget {
  Q_OBJECT
 public:
  explicit BenchPlace(OpenShop& shop, QWidget* parent = nullptr);
  ~BenchPlace() override;
  BenchModel& model() { return model_; }
  SetupModel& setup() { return setup_; }
  TesterPort& tester() { return tester_; }
  void take(const QString& tool);    // puts a tool on the bench
  void askForTool();                 // leaves what is there and waits for another
  void correct(std::int64_t check);  // lays a stored check out, to be replaced by a new record
  void arrive();                     // takes the focus where work goes on
  // What was typed before the program was last closed: "Not saved yet: the 7 readings …"; empty when nothing was.
  QString waitingText() const;

 signals:
  void historyWanted(const QString& tool);
  void recallWanted(const QString& tool);  // what its failed check puts in doubt

 private:
  QWidget* makeCheck();
  QWidget* makeReadings(QWidget* sheet);
  void connectParts();
  void connectPages();
  void pickUp(const QString& tool);
  std::vector<WaitingDraft> waiting() const;
  void offerWaiting();
  void goOnWith(const WaitingDraft& draft);
  void discardDraft(bool setup, const std::string& tool);
  void showPlan();
  void showEvaluation();
  void goToWork();
  void clear();
  void save();
  void sayWhatNow(const SavedCheck& saved);
  void sayFailed(const SavedCheck& saved);
  void sayNotSaved(const Problems& problems);
  void beginAsLeft();
  void askFor(ToolChange change, const QString& tool, const QString& proposed);
  void changeTool(ToolChange change, const QString& tool, const QString& reason);
  SetupPage& setupPage();
  TesterPage& testerPage();
  void openSetup();
  void backToCheck();
  void takeReading(const TesterReading& reading);
  void tell(Tone tone, const QString& text);
  void recallHeading();
  void rememberHeading() const;

  DraftKeeper keeper_;
  BenchModel model_;
  SetupModel setup_;
  TesterPort tester_;
  bool offered_ = false;  // what was typed before the program was last closed
  MessageLine *message_ = nullptr, *doubts_ = nullptr;
  ReasonLine* reason_ = nullptr;
  CorrectionLine* correction_ = nullptr;
  BenchForm* form_ = nullptr;
  QLabel* plan_ = nullptr;
  ReadingsGrid* grid_ = nullptr;
  CheckFoot* foot_ = nullptr;
  QStackedWidget* pages_;
  QWidget* check_;
  SetupPage* setupPage_ = nullptr;
  TesterPage* testerPage_ = nullptr;
};

}  // namespace steadyturn
