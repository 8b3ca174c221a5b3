#include "server_watch.h"

namespace steadyturn {

ServerWatch::ServerWatch(OpenShop& shop, QObject* parent) : QObject(parent), worker_(shop) {
  if (!shop.shop().onServer()) return;
  connect(&again_, &QTimer::timeout, this, &ServerWatch::look);
  again_.start(pause);
}

void ServerWatch::look() {
  if (asking_) return;
  asking_ = worker_.run<bool>(
      [](Shop& shop, const Progress&) -> Result<bool> {
        const auto reached = shop.reach();
        if (!reached) return tl::unexpected(reached.error());
        return true;
      },
      [this](const Result<bool>& reached) {
        asking_.reset();
        if (lost_ == !reached) return;
        lost_ = !reached;
        if (lost_) {
          emit wentAway(reached.error());
        } else {
          emit cameBack();
        }
      });
}

}  // namespace steadyturn
