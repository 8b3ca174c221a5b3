// Runs work off the window's thread, one piece after the other, on a database connection of its own; results come
// back as values on the thread that made the worker. A place that closes drops what is still running.
#pragma once

#include <QObject>
#include <atomic>
#include <condition_variable>
#include <deque>
#include <exception>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>

#include "open_shop.h"

namespace steadyturn {

// One piece of work, seen from outside.
class Job {
 public:
  void cancel() { stopped_ = true; }  // stops early; the result (a problem of kind Cancelled) still comes
  void drop() {                       // stops early, and nobody wants the result
    dropped_ = true;
    stopped_ = true;
  }
  bool stopped() const { return stopped_; }
  bool dropped() const { return dropped_; }

 private:
  std::atomic<bool> stopped_{false};
  std::atomic<bool> dropped_{false};
};
using Ticket = std::shared_ptr<Job>;

class Worker : public QObject {
  Q_OBJECT
 public:
  // Asked on the window's thread for each piece of work: which shop, and who works in it.
  using Who = std::function<Session()>;
  explicit Worker(Who who = {}, QObject* parent = nullptr);
  explicit Worker(OpenShop& shop, QObject* parent = nullptr);
  ~Worker() override;

  template <typename T>
  using Done = std::function<void(Result<T>)>;
  using Told = std::function<void(double)>;

  // Work on the shop.
  template <typename T>
  Ticket run(std::function<Result<T>(Shop&, const Progress&)> work, Done<T> done, Told told = {}) {
    return start<T>(
        [this, session = who_(), work = std::move(work)](const Progress& progress) -> Result<T> {
          if (!shop_) {
            Result<Shop> opened = Shop::open(session);
            if (!opened) return tl::unexpected(opened.error());
            shop_ = std::make_unique<Shop>(std::move(*opened));
          }
          shop_->actAs(session);
          return work(*shop_, progress);
        },
        std::move(done), std::move(told));
  }

  // Work that needs no open shop.
  template <typename T>
  Ticket start(std::function<Result<T>(const Progress&)> work, Done<T> done, Told told = {}) {
    auto job = std::make_shared<Job>();
    enqueue(job, [this, job, work = std::move(work), done = std::move(done), told = std::move(told)] {
      const Progress progress = [this, job, told](double part) {
        if (told && !job->stopped()) deliver([told, part] { told(part); });
        return !job->stopped();
      };
      auto result = std::make_shared<Result<T>>(carefully<T>(job, work, progress));
      deliver([this, job, done, result] {
        settle();
        if (!job->dropped()) done(std::move(*result));
      });
    });
    return job;
  }

  bool busy() const { return waiting_ > 0; }

 signals:
  void busyChanged(bool busy);

 private:
  template <typename T>
  static Result<T> carefully(const Ticket& job, const std::function<Result<T>(const Progress&)>& work,
                             const Progress& progress) {
    if (job->stopped()) return refuse({.kind = ProblemKind::Cancelled});
    try {
      return work(progress);
    } catch (const std::exception& trouble) {
      return refuse({.kind = ProblemKind::Unavailable, .accepted = trouble.what()});
    }
  }
  void enqueue(const Ticket& job, std::function<void()> piece);
  void deliver(std::function<void()> onWindowThread);
  Q_INVOKABLE void answerNext();
  void settle();
  void loop();

  const Who who_;
  std::unique_ptr<Shop> shop_;  // touched by the worker's thread alone
  int waiting_ = 0;             // touched by the window's thread alone
  std::mutex mutex_;
  std::condition_variable wake_;
  std::deque<std::pair<Ticket, std::function<void()>>> queue_;
  std::deque<std::function<void()>> answers_;  // for the window's thread
  Ticket running_;
  bool closing_ = false;
  std::thread thread_;
};

}  // namespace steadyturn
