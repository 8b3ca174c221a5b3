#!/usr/bin/env python3
"""Writes specs.csv: 200 invented specifications as workshop data state them, 40 of them with the unit swapped.

The torques come from general tightening tables of vehicle and machine service manuals and from spark plug fitting charts
(excerpts read in November 2026; makers are not named here), those in PARTS partly from common practice, from memory; none
from the program's own guard. A row draws a torque between the
two figures of such a table, states it in a workshop's unit and rounds it as paper does. A swapped row keeps the number
and names another unit. Run: python3 make_specs.py > specs.csv
"""
import random

NM = {"N.m": 1.0, "cN.m": 0.01, "kgf.m": 9.80665, "kgf.cm": 0.0980665, "lbf.ft": 1.3558179483314004,
      "lbf.in": 0.1129848290276167}

# what, thread, class, part material, seal, angle, from, to (N·m)
SCREWS = [
    ("M5", "4.6", 2.0, 3.0), ("M6", "4.6", 2.9, 4.9), ("M8", "4.6", 8.8, 11.8), ("M10", "4.6", 16.7, 22.6),
    ("M12", "4.6", 29, 39), ("M14", "4.6", 47, 64), ("M16", "4.6", 74, 100), ("M20", "4.6", 144, 195),
    ("M5", "8.8", 4.9, 6.9), ("M6", "8.8", 8, 12.7), ("M8", "8.8", 18, 30.4), ("M10", "8.8", 36, 60.8),
    ("M12", "8.8", 60, 106), ("M14", "8.8", 120, 170), ("M16", "8.8", 180, 267), ("M20", "8.8", 350, 535),
    ("M24", "8.8", 600, 930), ("M8x1", "8.8", 24, 30), ("M10x1.25", "8.8", 46, 60), ("M12x1.5", "8.8", 75, 99),
    ("M14x1.5", "8.8", 115, 172), ("M16x1.5", "8.8", 171, 257),
    ("M6", "10.9", 12, 18.6), ("M8", "10.9", 28, 44), ("M10", "10.9", 55, 88), ("M12", "10.9", 93, 155),
    ("M14", "10.9", 150, 249), ("M16", "10.9", 225, 390), ("M20", "10.9", 450, 766),
]
PARTS = [
    ("screw in a light alloy housing", "M6", "8.8", "aluminium", "", "", 8, 10),
    ("screw in a light alloy housing", "M8", "8.8", "aluminium", "", "", 18, 25),
    ("screw in a light alloy housing", "M10", "8.8", "aluminium", "", "", 36, 50),
    ("screw in a light alloy housing", "M12", "8.8", "aluminium", "", "", 50, 75),
    ("oil drain plug", "M12x1.5", "5.6", "aluminium", "crush washer", "", 20, 30),
    ("oil drain plug", "M14x1.5", "5.6", "aluminium", "crush washer", "", 24, 40),
    ("oil drain plug", "M18x1.5", "5.6", "aluminium", "crush washer", "", 40, 60),
    ("oil drain plug", "M22x1.5", "5.6", "steel", "crush washer", "", 60, 80),
    ("gearbox plug", "M20x1.5", "5.6", "cast iron", "bonded washer", "", 40, 60),
    ("spark plug", "M10x1", "", "aluminium", "gasket", "", 10, 12),
    ("spark plug", "M12x1.25", "", "aluminium", "gasket", "", 15, 20),
    ("spark plug", "M14x1.25", "", "aluminium", "gasket", "", 24.5, 29),
    ("banjo bolt", "M10x1", "", "steel", "sealing rings", "", 18, 25),
    ("banjo bolt", "M12x1.5", "", "steel", "sealing rings", "", 25, 40),
    ("exhaust probe", "M18x1.5", "", "steel", "sealing ring", "", 40, 50),
    ("wheel nut", "M12x1.5", "10.9", "steel", "", "", 90, 120),
    ("wheel nut", "M14x1.5", "10.9", "steel", "", "", 140, 180),
    ("wheel nut", "M18x1.5", "10.9", "steel", "", "", 250, 340),
    ("wheel nut", "M22x1.5", "10.9", "steel", "", "", 550, 700),
    ("mounting bolt", "M8", "8.8", "steel", "", "90", 20, 20),
    ("mounting bolt", "M10", "8.8", "steel", "", "90", 40, 40),
    ("mounting bolt", "M12", "10.9", "steel", "", "90", 60, 70),
    ("cover screw", "M5", "8.8", "plastic", "moulded gasket", "", 2, 4),
    ("cover screw", "M6", "8.8", "plastic", "moulded gasket", "", 4, 9),
    ("sensor screw", "M4", "", "plastic", "", "", 1, 2),
]
CONFUSED = {  # unit on paper: units it is mistaken for, the commonest first
    "N.m": ["lbf.ft", "lbf.ft", "lbf.in"], "lbf.ft": ["N.m", "N.m", "N.m", "lbf.in"], "lbf.in": ["lbf.ft", "N.m"],
    "kgf.m": ["N.m"], "kgf.cm": ["N.m", "cN.m"], "cN.m": ["N.m"],
}


def paper(draw, value):
    step = 0.1 if value < 5 else 0.5 if value < 20 else 1 if value < 60 else 5 if value < 300 else 10
    return round(round(value / step) * step, 3)


def unit_for(draw, torque):
    if torque < 12:
        return draw.choice(["N.m", "N.m", "N.m", "lbf.in", "lbf.in", "cN.m", "kgf.cm"])
    return draw.choice(["N.m", "N.m", "N.m", "N.m", "lbf.ft", "lbf.ft", "kgf.m"])


def main():
    draw = random.Random(2230)
    kinds = [("screw", t, c, m, "", "", a, b) for t, c, a, b in SCREWS for m in ("steel", "cast iron")][::2]
    kinds += [("bolt", t, c, "steel", "", "", a, b) for t, c, a, b in SCREWS] + PARTS + PARTS
    rows = []
    while len(rows) < 200:
        what, thread, cls, material, seal, angle, least, most = kinds[len(rows) % len(kinds)]
        torque = draw.uniform(least, most)
        unit = unit_for(draw, torque)
        rows.append([what, thread, cls, material, seal, angle, paper(draw, torque / NM[unit]), unit, ""])
    for i in draw.sample(range(200), 40):
        rows[i][8] = rows[i][7]
        rows[i][7] = draw.choice(CONFUSED[rows[i][7]])
    print("# source: general tightening tables of service manuals and spark plug charts (see make_specs.py)")
    print("# digits: as printed")
    print("component,thread,property_class,part_material,seal,angle_deg,target,unit,unit_on_paper")
    for row in rows:
        print(",".join(f"{x:g}" if isinstance(x, (int, float)) else x for x in row))


main()
