"""Reads a folder's lists by two readers that share no code with the program (Python's csv module; openpyxl) and holds them against each
other: the same headings, the same cells, numbers as numbers, no formula anywhere, headings in sight, a unit in each heading of numbers.

lists_check.py FOLDER WORKBOOK
"""

import csv
import sys
from pathlib import Path

import openpyxl

folder, workbook = Path(sys.argv[1]), sys.argv[2]
faults = []
book = openpyxl.load_workbook(folder / workbook)
pages = {tuple(cell.value for cell in page[1]): page for page in book.worksheets[1:]}
if book.worksheets[0].title != "About":
    faults.append("the first page is not About")
lists = sorted(folder.glob("list-*.csv"))
if not lists or len(lists) != len(pages):
    faults.append(f"{len(lists)} text files, {len(pages)} pages")
for path in lists:
    raw = path.read_bytes()
    if raw.startswith(b"\xef\xbb\xbf") or not raw.endswith(b"\r\n"):
        faults.append(f"{path.name}: byte order mark, or last line not ended")
    with open(path, newline="", encoding="utf-8") as file:
        rows = list(csv.reader(file, strict=True))
    page = pages.get(tuple(rows[0]))
    if page is None:
        faults.append(f"{path.name}: no page has its headings {rows[0]}")
        continue
    if page.freeze_panes != "A2":
        faults.append(f"{page.title}: headings not kept in sight")
    if page.max_row != len(rows):
        faults.append(f"{page.title}: {page.max_row} rows, {path.name} has {len(rows)}")
        continue
    for number, (row, cells) in enumerate(zip(rows[1:], page.iter_rows(min_row=2)), 2):
        if len(row) != len(rows[0]):
            faults.append(f"{path.name}:{number}: {len(row)} cells of {len(rows[0])}")
        for text, cell, heading in zip(row, cells, rows[0]):
            value = cell.value
            if cell.data_type == "f":
                faults.append(f"{page.title} {cell.coordinate}: a formula")
            elif value is None:
                same = text == ""
            elif isinstance(value, (int, float)):
                same = float(text) == float(value)
                places = len(text.partition(".")[2])
                wanted = "0." + "0" * places if places else "0"
                if cell.number_format != wanted:
                    faults.append(f"{page.title} {cell.coordinate}: shown as {cell.number_format}, written as {text}")
                lengths = heading.endswith((", in", ", mm"))
                if places == 4 and not lengths:
                    faults.append(f"{page.title} {cell.coordinate}: a length without a unit in {heading!r}")
            else:
                # Words that a spreadsheet would take for a formula have one apostrophe before them in the text file.
                guarded = value.strip()[:1] in tuple("=+-@") if value.strip() else False
                same = text.replace("\r\n", "\n") == ("'" + value if guarded else value)
            if cell.data_type != "f" and not same:
                faults.append(f"{page.title} {cell.coordinate}: {value!r}, {path.name} has {text!r}")
print("\n".join(faults[:20]) or f"ok: {len(lists)} lists")
sys.exit(bool(faults))
