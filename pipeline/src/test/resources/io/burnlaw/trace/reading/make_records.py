# Makes record.csv, record.xlsx and three .mat files beside this script, and firings.xlsx for the campaign reader, with
# openpyxl 3.1.5 and SciPy 1.17.1 (Python 3). The records hold the same invented numbers: 64 samples of a hump.
import math
import os

import numpy
import openpyxl
import scipy.io

here = os.path.dirname(os.path.abspath(__file__))
time = [-5.0 + 0.5 * i for i in range(64)]
pressure = [0.125 + 30 * math.exp(-(((t - 8) / 6) ** 2)) for t in time]
thrust = [3.3 * p - 0.1 for p in pressure]

with open(os.path.join(here, "record.csv"), "w", newline="\n") as out:
    out.write("time [ms],p [bar],load [N]\n")
    for row in zip(time, pressure, thrust):
        out.write(",".join(repr(x) for x in row) + "\n")

book = openpyxl.Workbook()
sheet = book.active
sheet.title = "record"
sheet["A1"] = "Stand 2, an invented record"
for column, heading in enumerate(["time [ms]", "p [bar]", "load [N]", "remark"], 1):
    sheet.cell(3, column, heading)
for i, row in enumerate(zip(time, pressure, thrust)):
    for column, value in enumerate(row, 1):
        sheet.cell(4 + i, column, value)
sheet["D10"] = "here, a comma"
book.create_sheet("notes")["A1"] = "a second sheet that nobody reads"
book.properties.created = book.properties.modified = __import__("datetime").datetime(2026, 1, 1)
book.save(os.path.join(here, "record.xlsx"))

columns = {name: numpy.array(values) for name, values in (("t_ms", time), ("p_bar", pressure), ("load_N", thrust))}
scipy.io.savemat(os.path.join(here, "record-v7.mat"), columns, do_compression=True, oned_as="column")
scipy.io.savemat(os.path.join(here, "record-v6.mat"), {"rec": columns, "operator": "nobody"}, oned_as="row")
matrix = numpy.column_stack([time, pressure]).astype(numpy.float32)
scipy.io.savemat(os.path.join(here, "record-matrix.mat"), {"data": matrix})

book = openpyxl.Workbook()
sheet = book.active
sheet.append(
    ["firing", "formulation", "trace", "grain", "segments", "outer_diameter [mm]", "core_diameter [mm]",
     "segment_length [mm]", "throat_diameter [mm]", "propellant_mass [g]", "use", "note"])
sheet.append(["A1", "p", "traces/A1.csv", "bates", 2, 38, 14.02, 60.5, 9, 180.4, "yes", "plain"])
sheet.append([2, "p", "traces/2.csv", "bates", 1, 38.01, 14, 60, "8.5", 91, "no: windy", None])
book.properties.created = book.properties.modified = __import__("datetime").datetime(2026, 1, 1)
book.save(os.path.join(here, "..", "..", "campaign", "reading", "firings.xlsx"))
