"""Check what a browser printed.   usage: browser_check.py printed.pdf WIDTHxHEIGHT,...
One page for each size (mm), in order, to 0.5 mm: browsers round pages to whole points."""
import sys
import pymupdf

wanted = [tuple(float(v) for v in size.split("x")) for size in sys.argv[2].split(",")]
with pymupdf.open(sys.argv[1]) as document:
    found = [(page.rect.width / 72 * 25.4, page.rect.height / 72 * 25.4) for page in document]
fine = len(found) == len(wanted) and all(max(abs(a - b) for a, b in zip(*pair)) < 0.5 for pair in zip(found, wanted))
print(found)
sys.exit(0 if fine else 1)
