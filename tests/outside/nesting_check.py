"""Checks a layout of pieces on sheets: sizes, edges, kerf, every piece once, cuts from edge to edge.

usage: nesting_check.py file.json   with {"input": a case's input, "layout": [[id, sheet, x, y, w, h], ...]}, inches."""
import json
import sys

from nesting_layout import check_layout

given = json.load(open(sys.argv[1]))
names = ("id", "sheet", "x_in", "y_in", "w_in", "h_in")
faults, sheets, edge_to_edge = check_layout(given["input"], [dict(zip(names, row)) for row in given["layout"]])
if not edge_to_edge:
    faults.append("can't be cut from edge to edge")
print("\n".join(faults))
sys.exit(1 if faults else 0)
