#include <array>
#include <span>
#include <string>

#include "demo_parts.h"

namespace steadyturn {

namespace {

// A vehicle type of the depot. Wheel and brake torques grow with it.
struct Vehicle {
  const char* mark;
  const char* name;
  bool plasticFilter;  // the oil filter housing is moulded
  bool sparkPlugs;
  double wheel;  // N·m
  const char* wheelThread;
  double bracket;  // N·m, brake bracket
  const char* bracketThread;
};

constexpr std::array vehicles{
    Vehicle{"VA", "small van", true, true, 120, "M12x1.5", 105, "M12x1.5"},
    Vehicle{"VB", "panel van", true, false, 170, "M14x1.5", 170, "M14x1.5"},
    Vehicle{"MB", "minibus", true, false, 180, "M14x1.5", 170, "M14x1.5"},
    Vehicle{"SW", "street sweeper", false, false, 300, "M18x1.5", 200, "M14x1.5"},
    Vehicle{"RL", "refuse lorry", false, false, 600, "M22x1.5", 280, "M16x1.5"},
    Vehicle{"GR", "gritter lorry", false, false, 600, "M22x1.5", 280, "M16x1.5"},
    Vehicle{"TR", "park tractor", false, false, 210, "M16x1.5", 110, "M12"},
    Vehicle{"PC", "pool car", true, true, 110, "M12x1.5", 100, "M12x1.5"},
};

struct Spec {
  const char* component = "";
  const char* thread = "";
  const char* propertyClass = "";
  const char* material = "";
  const char* drive = "";
  double target = 0, low = 0, high = 0;
  double limit = 0;  // 0: none on record
  const char* seal = "";
  bool renew = false;
  const char* lubrication = "";
  const char* seatCheck = "";
  double angle = 0;
  const char* sequence = "";
};

constexpr const char* oilSeal = "oil the rubber seal";
constexpr const char* dry = "clean and dry";

void addSpec(std::vector<Fastener>& into, const Vehicle& vehicle, const Spec& spec) {
  const auto given = [](double value) { return value > 0 ? std::optional(value) : std::nullopt; };
  const auto count = into.size() % 10 + 1;
  into.push_back({.id = std::string(vehicle.mark) + "-" + (count < 10 ? "0" : "") + std::to_string(count),
                  .assembly = vehicle.name,
                  .component = spec.component,
                  .thread = spec.thread,
                  .propertyClass = spec.propertyClass,
                  .partMaterial = spec.material,
                  .drive = spec.drive,
                  .unit = Unit::NewtonMetre,
                  .target = spec.target,
                  .low = given(spec.low),
                  .high = given(spec.high),
                  .angleDeg = given(spec.angle),
                  .partLimit = given(spec.limit),
                  .seal = spec.seal,
                  .renew = *spec.seal == '\0' ? std::nullopt : std::optional(spec.renew),
                  .lubrication = spec.lubrication,
                  .seatCheck = spec.seatCheck,
                  .source = std::string("depot data sheet ") + vehicle.mark + "-7 (invented)",
                  .revision = "3",
                  .number = 1,
                  .revisionReason = {},
                  .sequence = spec.sequence,
                  .enteredBy = "depot office"});
}

void addFilter(std::vector<Fastener>& into, const Vehicle& vehicle) {
  if (vehicle.plasticFilter) {
    addSpec(into, vehicle,
            {"oil filter housing cover", "", "", "plastic", "36 mm hexagon", 25, 22, 27, 30, "O-ring", true, oilSeal,
             "cover sits flat on the housing all round; a new thick seal can take up torque before it does"});
    addSpec(into, vehicle,
            {"drain plug in the oil filter cover", "", "", "plastic", "1/4 in square", 10, 9, 11, 12, "O-ring", true,
             oilSeal, "flange of the plug touches the cover"});
    return;
  }
  addSpec(into, vehicle,
          {"oil filter housing cover", "", "", "aluminium", "41 mm hexagon", 40, 36, 44, 0, "O-ring", true, oilSeal,
           "cover sits flat on the housing all round"});
  addSpec(into, vehicle,
          {"drain plug in the oil filter cover", "M12x1.5", "5.6", "aluminium", "17 mm hexagon", 25, 22, 28, 0,
           "crush washer", true, dry, "washer flat all round"});
}

void addVehicle(std::vector<Fastener>& into, const Vehicle& v) {
  addSpec(
      into, v,
      {"oil drain plug", v.wheel > 250 ? "M22x1.5" : "M14x1.5", "5.6", v.wheel > 250 ? "steel" : "aluminium",
       v.wheel > 250 ? "24 mm hexagon" : "17 mm hexagon", v.wheel > 250 ? 60.0 : 30.0, v.wheel > 250 ? 54.0 : 27.0,
       v.wheel > 250 ? 66.0 : 33.0, 0, "crush washer", true, dry, "washer flat all round"});
  addFilter(into, v);
  addSpec(into, v,
          {"wheel nut", v.wheelThread, "10.9", "steel", v.wheel > 250 ? "32 mm hexagon" : "19 mm hexagon", v.wheel,
           v.wheel * 0.92, v.wheel * 1.08, 0, "", false, dry, "wheel sits flat on the hub; check again after 50 km",
           0, "cross pattern"});
  addSpec(
      into, v,
      {"front brake bracket bolt", v.bracketThread, "10.9", "cast iron", "21 mm hexagon", v.bracket, v.bracket * 0.93,
       v.bracket * 1.07, 0, "", false, "thread lock as supplied", "bracket flat on the knuckle"});
  if (v.sparkPlugs) {
    addSpec(into, v,
            {"spark plug", "M12x1.25", "", "aluminium", "16 mm hexagon", 20, 18, 22, 0, "gasket", false, dry,
             "gasket crushed evenly"});
  } else {
    addSpec(into, v,
            {"glow plug", "M10x1", "", "aluminium", "10 mm hexagon", 15, 13, 17, 0, "cone seat", false, dry,
             "runs in by hand"});
  }
  addSpec(into, v,
          {"valve cover screw", "M6", "8.8", "plastic", "T30", 9, 8, 10, 0, "moulded gasket", false, dry,
           "cover flat", 0, "in a spiral from the middle"});
  addSpec(into, v,
          {"gearbox fill plug", "M18x1.5", "5.6", "aluminium", "8 mm hexagon socket", 35, 0, 0, 0, "crush washer",
           true, dry, "washer flat all round"});
  addSpec(into, v,
          {"air filter cover screw", "", "", v.plasticFilter ? "plastic" : "steel", "T25", 3, 2.5, 3.5,
           v.plasticFilter ? 4.5 : 0.0, "", false, dry, "cover edges meet"});
  addSpec(into, v,
          {"engine mount bolt", "M12", "8.8", "steel", "18 mm hexagon", 60, 55, 65, 0, "", false, dry,
           "mount free of twist", 90});
}

}  // namespace

std::vector<Fastener> demoFasteners() {
  std::vector<Fastener> fasteners;
  for (const auto& vehicle : vehicles) addVehicle(fasteners, vehicle);
  // Not every plastic cover of the depot has its limit on record: that is what the warning is for. Valve covers have
  // none but two.
  for (auto& fastener : fasteners) {
    if (fastener.component == "valve cover screw" && fastener.assembly != "refuse lorry" &&
        fastener.assembly != "minibus") {
      fastener.partLimit = 12;
    }
  }
  // Wheels of the heavy vehicles are pulled up in two rounds.
  for (auto& fastener : fasteners) {
    if (fastener.component == "wheel nut" && fastener.target >= 300) {
      fastener.stages = {{.value = fastener.target / 2}, {.value = fastener.target}};
    }
  }
  return fasteners;
}

std::vector<ServiceList> demoServices(const std::vector<Fastener>& fasteners) {
  constexpr std::array oil{"oil drain plug", "oil filter housing cover", "drain plug in the oil filter cover",
                           "air filter cover screw"};
  constexpr std::array wheels{"wheel nut", "front brake bracket bolt"};
  std::vector<ServiceList> services;
  const auto add = [&](const Vehicle& vehicle, const char* name, std::span<const char* const> components) {
    ServiceList service{.name = std::string(name) + ", " + vehicle.name, .fasteners = {}};
    for (const auto* component : components) {
      for (const auto& one : fasteners) {
        if (one.assembly == vehicle.name && one.component == component) service.fasteners.push_back(one.id);
      }
    }
    services.push_back(std::move(service));
  };
  for (const auto& vehicle : vehicles) {
    add(vehicle, "oil and filter", oil);
    add(vehicle, "wheels and brakes", wheels);
  }
  return services;
}

}  // namespace steadyturn
