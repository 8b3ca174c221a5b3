#include "worker.h"

#include <QMetaObject>

namespace steadyturn {

Worker::Worker(OpenShop& shop, QObject* parent) : Worker([&shop] { return shop.shop().session(); }, parent) {}

Worker::Worker(Who who, QObject* parent) : QObject(parent), who_(std::move(who)) {
  thread_ = std::thread([this] { loop(); });
}

Worker::~Worker() {
  {
    const std::lock_guard lock(mutex_);
    closing_ = true;
    if (running_) running_->drop();
    queue_.clear();
  }
  wake_.notify_one();
  thread_.join();
}

void Worker::enqueue(const Ticket& job, std::function<void()> piece) {
  {
    const std::lock_guard lock(mutex_);
    queue_.emplace_back(job, std::move(piece));
  }
  wake_.notify_one();
  if (++waiting_ == 1) emit busyChanged(true);
}

// What is handed over passes through a lock of our own, and the event only wakes the window's thread: ThreadSanitizer
// doesn't see the locks inside Qt, and would find a race in every answer, and (by its address instead of its name) in
// the function that the event calls.
void Worker::deliver(std::function<void()> onWindowThread) {
  {
    const std::lock_guard lock(mutex_);
    answers_.push_back(std::move(onWindowThread));
  }
  QMetaObject::invokeMethod(this, "answerNext", Qt::QueuedConnection);
}

void Worker::answerNext() {
  std::function<void()> answer;
  {
    const std::lock_guard lock(mutex_);
    answer = std::move(answers_.front());
    answers_.pop_front();
  }
  answer();
}

void Worker::settle() {
  if (--waiting_ == 0) emit busyChanged(false);
}

void Worker::loop() {
  for (;;) {
    std::function<void()> piece;
    {
      std::unique_lock lock(mutex_);
      wake_.wait(lock, [this] { return closing_ || !queue_.empty(); });
      if (closing_) break;
      running_ = queue_.front().first;
      piece = std::move(queue_.front().second);
      queue_.pop_front();
    }
    piece();
    const std::lock_guard lock(mutex_);
    running_.reset();
  }
  // A connection belongs to the thread that opened it.
  shop_.reset();
}

}  // namespace steadyturn
