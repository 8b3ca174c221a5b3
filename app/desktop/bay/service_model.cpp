#include "service_model.h"

#include <algorithm>
#include <set>
#include <utility>

#include "problem_text.h"
#include "shop_people.h"

namespace steadyturn {

ServiceModel::ServiceModel(OpenShop& shop, QObject* parent)
    : QObject(parent), shop_(shop), drafts_(keptServiceDrafts(shop.shop().id())) {
  connect(&shop, &OpenShop::peopleChanged, this, &ServiceModel::peopleChanged);
  connect(&shop, &OpenShop::fastenersChanged, this, [this] { known_.clear(); });
}

Result<void> ServiceModel::read() {
  auto services = shop_.shop().services();
  if (!services) return tl::unexpected(services.error());
  saved_ = std::move(*services);
  known_.clear();
  return {};
}

std::optional<ServiceList> ServiceModel::saved(const std::string& name) const {
  const auto found = std::ranges::find(saved_, name, &ServiceList::name);
  return found == saved_.end() ? std::nullopt : std::optional(*found);
}

std::vector<std::string> ServiceModel::names() const {
  std::set<std::string> names;
  for (const ServiceList& service : saved_) names.insert(service.name);
  for (const auto& [name, draft] : drafts_) {
    if (draft.from) names.insert(name);
  }
  return {names.begin(), names.end()};
}

QString ServiceModel::whyNot() {
  const Result<void> allowed = may(shop_.shop(), Act::SetService);
  return allowed ? QString() : wordProblems(allowed.error());
}

void ServiceModel::take(const std::string& name) { taken_ = name; }

ServiceList ServiceModel::list() const {
  if (const auto typed = drafts_.find(taken_); typed != drafts_.end()) return typed->second.typed;
  return saved(taken_).value_or(ServiceList{});
}

std::vector<Fastener> ServiceModel::fasteners() {
  std::vector<Fastener> fasteners;
  for (const std::string& mark : list().fasteners) {
    auto known = known_.find(mark);
    if (known == known_.end()) {
      Fastener unknown;
      unknown.id = mark;
      known = known_.emplace(mark, shop_.shop().fastener(mark).value_or(std::move(unknown))).first;
    }
    fasteners.push_back(known->second);
  }
  return fasteners;
}

void ServiceModel::change(ServiceList typed) {
  const auto begun = drafts_.find(taken_);
  const auto from = begun == drafts_.end() ? saved(taken_) : begun->second.from;
  if (typed == from.value_or(ServiceList{})) {
    drafts_.erase(taken_);
  } else {
    drafts_[taken_] = {.from = from, .typed = std::move(typed)};
  }
  keepServiceDrafts(shop_.shop().id(), drafts_);
}

void ServiceModel::setName(const std::string& name) {
  ServiceList typed = list();
  typed.name = name;
  change(std::move(typed));
}

int ServiceModel::add(const std::string& mark) {
  ServiceList typed = list();
  const auto found = std::ranges::find(typed.fasteners, mark);
  const int row = static_cast<int>(found - typed.fasteners.begin());
  if (found != typed.fasteners.end()) return row;
  typed.fasteners.push_back(mark);
  change(std::move(typed));
  return row;
}

void ServiceModel::remove(int row) {
  ServiceList typed = list();
  if (row < 0 || row >= static_cast<int>(typed.fasteners.size())) return;
  typed.fasteners.erase(typed.fasteners.begin() + row);
  change(std::move(typed));
}

int ServiceModel::move(int row, int by) {
  ServiceList typed = list();
  const int last = static_cast<int>(typed.fasteners.size()) - 1;
  const int to = row + by;
  if (row < 0 || row > last || to < 0 || to > last) return row;
  std::swap(typed.fasteners[static_cast<std::size_t>(row)], typed.fasteners[static_cast<std::size_t>(to)]);
  change(std::move(typed));
  return to;
}

void ServiceModel::giveUp() {
  if (const auto typed = drafts_.extract(taken_)) givenUp_ = typed.mapped();
  keepServiceDrafts(shop_.shop().id(), drafts_);
}

void ServiceModel::bringBack() {
  if (!givenUp_) return;
  take(givenUp_->from ? givenUp_->from->name : std::string());
  drafts_[taken_] = *std::exchange(givenUp_, std::nullopt);
  keepServiceDrafts(shop_.shop().id(), drafts_);
}

std::optional<ServiceList> ServiceModel::inTheWay() {
  if (!read()) return std::nullopt;  // saving will say why the shop can't be asked
  const auto begun = drafts_.find(taken_);
  if (begun == drafts_.end()) return std::nullopt;
  const auto there = saved(begun->second.typed.name);
  return there && there != begun->second.from && *there != begun->second.typed ? there : std::nullopt;
}

Result<void> ServiceModel::save() {
  const ServiceList typed = list();
  if (auto set = shop_.shop().setService(typed); !set) return set;
  drafts_.erase(taken_);
  keepServiceDrafts(shop_.shop().id(), drafts_);
  take(typed.name);
  return read();
}

}  // namespace steadyturn
