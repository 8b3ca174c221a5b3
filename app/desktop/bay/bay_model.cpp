#include "bay_model.h"

#include "text.h"

namespace steadyturn {

BayModel::BayModel(OpenShop& shop, QObject* parent)
    : QObject(parent), shop_(shop), finder_(shop.address()), ranker_(shop.address()) {
  connect(&shop, &OpenShop::toolsChanged, this, &BayModel::rank);
  connect(&shop, &OpenShop::fastenersChanged, this, [this] { find(words_); });
  find({});
}

void BayModel::find(const QString& words) {
  words_ = words;
  if (finding_) finding_->drop();
  finding_ = finder_.run<std::vector<Fastener>>(
      [typed = toText(words.simplified())](Shop& shop, const Progress&) {
        return shop.findFasteners(typed, mostFound);
      },
      [this](Result<std::vector<Fastener>> fasteners) {
        if (!fasteners) return void(emit troubled(fasteners.error()));
        found_.show(std::move(*fasteners));
        emit foundChanged();
      });
}

void BayModel::choose(const Fastener& fastener) {
  if (fastener_ && fastener_->id == fastener.id && fastener_->number == fastener.number) return;
  fastener_ = fastener;
  warnings_.clear();
  options_.show({}, {});
  refused_.show({});
  emit fastenerChanged();
  rank();
}

void BayModel::setAdapter(const std::optional<Adapter>& adapter) {
  adapter_ = adapter;
  rank();
}

void BayModel::rank() {
  if (!fastener_) return;
  if (ranking_) ranking_->drop();
  setWorking(true);
  ranking_ = ranker_.run<Answer>(
      [id = fastener_->id, adapter = adapter_](Shop& shop, const Progress&) -> Result<Answer> {
        Result<FastenerChoice> choice = shop.choose(id, shop.today(), adapter);
        if (!choice) return tl::unexpected(choice.error());
        Answer answer{std::move(*choice), {}};
        if (const Result<std::vector<Tool>> tools = shop.tools()) {
          for (const Tool& tool : *tools) answer.descriptions[tool.id] = fromText(tool.description);
        }
        return answer;
      },
      [this](Result<Answer> answer) {
        setWorking(false);
        if (!answer) return void(emit troubled(answer.error()));
        take(std::move(*answer));
      });
}

void BayModel::take(Answer answer) {
  fastener_ = answer.choice.fastener;
  warnings_ = std::move(answer.choice.warnings);
  options_.show(std::move(answer.choice.choice.options), std::move(answer.descriptions));
  refused_.show(std::move(answer.choice.choice.refused));
  emit choiceChanged();
}

void BayModel::setWorking(bool working) {
  if (working_ == working) return;
  working_ = working;
  emit workingChanged(working);
}

Result<Tightening> BayModel::record(const Option& option, const TypedTightening& typed) {
  if (!fastener_) return refuse({.field = "fastener", .found = {}, .accepted = "find the fastener first"});
  Tightening tightening;
  tightening.job = toText(typed.job.trimmed());
  tightening.vehicle = toText(typed.vehicle.trimmed());
  tightening.date = typed.date;
  tightening.fastener = fastener_->id;
  tightening.fastenerNumber = fastener_->number;
  tightening.tool = option.tool;
  tightening.setting = asNumberText(typed.setting);
  tightening.unit = option.setting.unit;
  tightening.seatChecked = typed.seatChecked;
  tightening.by = toText(typed.by.trimmed());
  return shop_.shop().recordTightening(tightening);
}

}  // namespace steadyturn
