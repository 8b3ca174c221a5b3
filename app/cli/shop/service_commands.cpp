// `sturn service set|list`.
#include <CLI/CLI.hpp>

#include "display_text.h"
#include "json_document.h"
#include "shop_commands.h"

namespace steadyturn {
namespace {

Result<Output> setService(Shop& shop, const ServiceList& service) {
  if (const auto set = shop.setService(service); !set) return tl::unexpected(set.error());
  return Output{.text = "Set the service " + displayText(service.name) + '\n', .cautions = {}};
}

Result<Output> listServices(Shop& shop, bool json) {
  const auto services = shop.services();
  if (!services) return tl::unexpected(services.error());
  OrderedJson all = OrderedJson::array();
  std::string text;
  for (const ServiceList& service : *services) {
    all.push_back({{"service", service.name}, {"fasteners", service.fasteners}});
    text += displayText(service.name) + ":";
    for (const std::string& mark : service.fasteners) text += ' ' + displayText(mark);
    text += '\n';
  }
  if (json) return Output{.text = writeDocument({{"services", std::move(all)}}), .cautions = {}};
  return Output{.text = text.empty() ? "No service on the list.\n" : text, .cautions = {}};
}

}  // namespace

void addServiceCommands(Context& context) {
  CLI::App& group = *context.addGroup("service", "The lists that services work down: set, list");
  const auto service = std::make_shared<ServiceList>();
  const auto json = std::make_shared<bool>(false);

  CLI::App* setting = context.add(group, "set", "Set the list of a service; a later one takes its place",
                                  "sturn service set 'oil and filter, type B van' B-01 B-02 B-03");
  setting->add_option("NAME", service->name, "What the service is called")->required()->type_name("");
  setting->add_option("FASTENER", service->fasteners, "Marks, in the order of the work")->required()->type_name("");
  context.runs(setting, [=](Shop& shop) { return setService(shop, *service); });

  CLI::App* list = context.add(group, "list", "List the services", "sturn service list");
  list->add_flag("--json", *json, R"(Print {"services": [...]})");
  context.runs(list, [=](Shop& shop) { return listServices(shop, *json); });
}

}  // namespace steadyturn
