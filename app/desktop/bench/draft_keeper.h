// Keeps checks and set-ups on disk while they are being typed, so that a crash, a kill or a power cut loses none of
// them.
//
// The writing is done on a connection and a thread of its own: an import that holds the database never holds the
// window. Where the disk is at hand, keep() has kept when it returns; only where it takes longer than a person would
// notice does it go on by itself, and failed() tells when it could not.
#pragma once

#include <QObject>
#include <future>

#include "worker.h"

namespace steadyturn {

// A check or a set-up that was typed and not saved, and is not on the bench now.
struct WaitingDraft {
  bool setup = false;
  std::string tool;
  int readings = 0;
  Date date{};
};

class DraftKeeper : public QObject {
  Q_OBJECT
 public:
  explicit DraftKeeper(OpenShop& shop, QObject* parent = nullptr);
  ~DraftKeeper() override;
  void keep(const CheckDraft& draft);
  void keep(const BenchSetupDraft& draft);
  void discard(const std::string& tool);
  void discardSetup(const std::string& tool);
  // Until the last of it is on disk, or at most this long. False: not yet, or not possible.
  bool settle(int milliseconds);

 signals:
  void failed(const Problems& problems);

 private:
  void start(std::function<Result<void>(Shop&)> write);

  struct Outcome {
    bool kept;
  };
  std::shared_future<Outcome> last_;
  Worker worker_;
};

}  // namespace steadyturn
