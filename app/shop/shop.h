// The application layer: every thing a person can do in a shop is one function here, and permission and validation
// live here, once, for the desktop and the command line alike. Values in, values out; problems are data.
//
// A Shop is one connection, used by one thread. Work that takes long runs on a Shop of its own (open() again) off the
// window's thread.
#pragma once

#include <cstdint>
#include <functional>
#include <iosfwd>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "choose.h"
#include "job_record.h"
#include "records.h"
#include "shop_views.h"

namespace steadyturn {

// Told now and then how far a long action is (0 … 1); returning false cancels it and leaves nothing behind.
using Progress = std::function<bool(double)>;

enum class Access {
  Work,  // to be written to, where the account that is signed in may
  Look   // the auditor's door: nothing is written to the file or beside it, whoever asks
};

// Who works where: hands an account that is signed in on to another connection. Made by a Shop alone.
class Session {
  friend class Shop;
  Session(std::string address, Access access, std::string who)
      : address_(std::move(address)), access_(access), who_(std::move(who)) {}
  std::string address_;
  Access access_;
  std::string who_;
};

class Shop {
 public:
  struct Inside;  // for the application layer's own sources
  static Result<Shop> create(const std::string& address, const std::string& name = {});
  static Result<Shop> open(const std::string& address, Access access = Access::Work);
  static Result<Shop> open(const Session& session);
  // A new shop filled with the invented municipal depot, the same every time.
  static Result<Shop> createDemo(const std::string& address, const Progress& progress = {});

  Shop(Shop&&) noexcept;
  Shop& operator=(Shop&&) noexcept;
  ~Shop();

  Session session() const;
  void actAs(const Session& session);  // of the same shop
  const std::string& address() const;  // as it may be shown: without a password
  std::string name() const;
  std::string id() const;  // tells this shop from every other; never changes
  ShopFacts facts() const;
  bool readOnly() const;  // by its file, or as it was opened
  bool onServer() const;  // a database of a server, not a file
  // Whether the shop can be asked at this moment; a server's connection that broke is taken up again.
  Result<void> reach() const;
  Access access() const;  // as it was opened
  // The day that counts as today: the clock's, or the demo depot's fixed one.
  Date today() const;
  bool isDemo() const;
  Policy policy() const;
  Result<void> change(const ShopFacts& facts, const Policy& policy);  // both or neither

  // Tools
  Result<void> addTool(const Tool& tool);
  Result<Tool> tool(const std::string& id) const;
  Result<std::vector<Tool>> tools() const;
  Result<void> holdTool(const std::string& id, const std::string& reason);
  Result<void> releaseTool(const std::string& id, const std::string& reason);
  Result<void> retireTool(const std::string& id, const std::string& reason);

  // Reference standards
  Result<void> addReference(const Reference& reference);
  Result<Reference> reference(const std::string& id) const;
  Result<std::vector<Reference>> references() const;
  // What speaks against checking this tool with this reference on that day, the gravest first; empty: nothing.
  Result<std::vector<ReferenceDoubt>> referenceDoubts(const std::string& tool, const std::string& reference,
                                                      Date date) const;
  // What a reference's certificate covers. A later range takes an earlier one's place; both stay in the ledger.
  Result<void> setReferenceRange(const std::string& reference, const ReferenceRange& range);
  Result<std::optional<ReferenceRange>> referenceRange(const std::string& reference) const;

  // Checks
  // What the standard asks of this tool's check: set-points and number of readings at each.
  Result<CheckPlan> planCheck(const std::string& tool) const;
  // Evaluates what has been typed so far; empty points are passed over. Nothing is written.
  Result<CheckResult> evaluateDraft(const CheckDraft& draft) const;
  Result<Check> recordCheck(const CheckDraft& draft);
  // Replaces check `id` by a new record with a reason; both stay visible.
  Result<Check> correctCheck(std::int64_t id, const CheckDraft& draft, const std::string& reason);
  Result<Check> check(std::int64_t id) const;
  Result<std::vector<Check>> checksOf(const std::string& tool) const;
  Result<std::vector<Check>> newestChecks(int limit) const;

  // Uncertainty budgets with where each figure came from, one a set-point: of what has been typed so far, or of a
  // stored check (its stored figures).
  Result<std::vector<BudgetView>> budgetOf(const CheckDraft& draft) const;
  Result<std::vector<BudgetView>> budgetOf(std::int64_t check) const;

  // Checks being typed, one a tool. A draft whose save returned survives a kill and a power cut; recordCheck of its
  // tool removes it in the transaction that stores the check.
  Result<void> saveDraft(const CheckDraft& draft);
  Result<std::vector<SavedDraft>> drafts() const;      // the newest first
  Result<void> discardDraft(const std::string& tool);  // none there is fine

  // Bench set-ups (ISO 6789-2): the runs that yield a tool model's spans of reproducibility, drive, interface and
  // loading point. Checks dated on or after a set-up use its spans, each from the newest set-up that has it; imports
  // take the record as it comes.
  Result<BenchSetupPlan> planBenchSetup(const std::string& tool) const;
  Result<BenchSetup> recordBenchSetup(const BenchSetupDraft& draft);
  // Set-ups being typed, one a tool; kept as checks are, and removed by recordBenchSetup.
  Result<void> saveSetupDraft(const BenchSetupDraft& draft);
  Result<std::vector<BenchSetupDraft>> setupDrafts() const;  // the newest first
  Result<void> discardSetupDraft(const std::string& tool);   // none there is fine
  Result<std::vector<BenchSetup>> benchSetups() const;       // the newest first

  // Drift, due, overview
  Result<ToolDrift> drift(const std::string& tool, Date asOf) const;
  Result<std::vector<ToolOverview>> overview(Date asOf, const Progress& progress = {}) const;  // every tool, by id
  // Tools in service whose due date is on or before `until`, earliest first, and those never checked.
  Result<std::vector<ToolOverview>> due(Date asOf, Date until) const;

  // Fasteners
  Result<Saved> addFastener(const Fastener& fastener);
  Result<Saved> reviseFastener(const Fastener& fastener, const std::string& reason);
  Result<Fastener> fastener(const std::string& id) const;
  Result<std::vector<Fastener>> fasteners() const;
  Result<std::vector<Fastener>> fastenerRevisions(const std::string& id) const;  // oldest first
  // A second person stands for the newest revision; refused to the one who entered it. Till then it is not released.
  Result<Fastener> approveFastener(const std::string& id, const std::string& by);
  // What to ask before `fastener` is saved. Nothing is written.
  FastenerQuestions questionsAbout(const Fastener& fastener) const;
  Result<std::vector<Fastener>> findFasteners(const std::string& words, int limit) const;
  Result<FastenerChoice> choose(const std::string& fastener, Date asOf,
                                const std::optional<Adapter>& adapter = {}) const;

  // What people call things: phrases of a group find the same fasteners.
  Result<std::vector<SynonymGroup>> synonyms() const;
  Result<void> addSynonym(const std::string& phrase, const std::string& meaning);
  Result<void> removeSynonym(const std::string& phrase);

  // Jobs. A job takes tightenings until it is closed; one that was never opened is begun by its first tightening.
  Result<void> setService(const ServiceList& service);
  Result<std::vector<ServiceList>> services() const;
  Result<JobSheet> openJob(const JobDraft& draft);
  Result<JobSheet> jobSheet(const std::string& id) const;
  Result<std::vector<JobRecord>> openJobs() const;  // the newest first
  // With something undone it wants a reason.
  Result<JobSheet> closeJob(const std::string& id, Date date, const std::string& by, const std::string& reason);

  // Tightenings
  Result<Tightening> recordTightening(const Tightening& tightening);
  Result<std::vector<Tightening>> tighteningsOfJob(const std::string& job) const;

  // Recall: what a tool's newest failed check puts in doubt (ISO/IEC 17025:2017, 7.10; ISO 9001:2015, 7.1.5.2).
  Result<RecallList> recall(const std::string& tool) const;
  // A later decision about the same tightening takes the earlier one's place; both stay in the ledger.
  Result<RecallList> decideRecall(const std::string& tool, const RecallChoice& choice);
  // Only when every tightening in doubt is decided; a closed recall takes no more decisions.
  Result<RecallList> closeRecall(const std::string& tool, const std::string& by, const std::string& note);

  // Files
  Result<ImportReport> importCsv(TableKind kind, const std::string& path, const ImportOptions& options,
                                 const Progress& progress = {});
  Result<void> exportCsv(TableKind kind, std::ostream& out, const ExportOptions& options = {},
                         const Progress& progress = {}) const;

  // Material for reports
  // What falls to the bench up to `until`: the due list without held tools, with what to check and why.
  Result<std::vector<DueWork>> dueWork(Date asOf, Date until) const;
  Result<ToolRegisterData> toolRegister(Date asOf) const;
  Result<CertificateData> certificate(std::int64_t check) const;
  Result<RecallReportData> recallReport(const std::string& tool) const;
  Result<JobSheetData> jobSheetData(const std::string& job) const;
  // Every tool that is not retired, worst first.
  Result<std::vector<FleetStory>> fleet(Date asOf, const Progress& progress = {}) const;
  // Of one tool at each of its set-points, rising.
  Result<std::vector<HistoryData>> histories(const std::string& tool, Date asOf) const;
  Result<HistoryData> history(const std::string& tool, std::optional<StatedTorque> target, Date asOf) const;

  Inside& inside() const { return *inside_; }  // for the application layer's own sources

 private:
  explicit Shop(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

}  // namespace steadyturn
