"""Check full-size templates as printed.   usage: templates_check.py TILES ONE_PAGE [--printer ACROSS,ALONG] [--only NAME]
TILES and ONE_PAGE are folders that `faceline templates` wrote, the one on sheets, the other on a roll.
Each template is printed by a printer that is off by the given factors (none: a true one); then
 - every page is its paper, by two readers;
 - every scale bar of every page measures what it says to 0.01 mm, both ways; the second reader, which is slow, looks at
   the bars of the first page, the last, and every fifth between them;
 - the tiles, put together as their list says, are the one page to 0.05 mm."""
import json, os, re, sys, tempfile
import pdfplumber, pymupdf
import pdf_measure, pdf_stitch
from printed import printed

GREYS = ["1f1f1f", "77766f", "595959", "808080", "b9b9b9", "ffffff", "a3160f"]
IGNORED = [[int(c[k:k + 2], 16) / 255 for k in (0, 2, 4)] for c in GREYS]
MM = 25.4 / 72
BAR = re.compile(r"^(\d+) (in|mm)$")


def bars(page):
    """What the labels of a page's bars say: (text, millimetres)."""
    for block in page.get_text("dict")["blocks"]:
        for line in block.get("lines", []):
            text = "".join(span["text"] for span in line["spans"]).strip()
            found = BAR.match(text)
            if found:
                yield text, float(found[1]) * (25.4 if found[2] == "in" else 1.0)


def plumber_pages(path):
    """Paper of every page, and straight lines of some."""
    pages = []
    with pdfplumber.open(path) as document:
        for index, page in enumerate(document.pages):
            x0, y0, x1, y1 = [float(v) * MM for v in page.mediabox]
            read = dict(mediabox_mm=[x1 - x0, y1 - y0])
            if index % 5 == 0 or index + 1 == len(document.pages):
                read["segs"] = [(l["x0"] * MM, l["y0"] * MM, l["x1"] * MM, l["y1"] * MM, False) for l in page.lines]
            pages.append(read)
            page.close()
    return pages


def check(tiles, whole, template, reference, factors):
    failures = []
    with tempfile.TemporaryDirectory() as home:
        paper = os.path.join(home, "printed.pdf")
        # A sheet that lies, or a roll that runs across the page, goes through the printer turned.
        across, along = factors
        x, y = (across, along) if template["printer_across"] == "x" else (along, across)
        printed(os.path.join(tiles, template["pdf"]), paper, x, y)
        wanted = {}
        with pymupdf.open(paper) as document:
            for number, page in enumerate(document, 1):
                wanted[number] = sorted({length for _, length in bars(page)})
        a, b = pdf_measure.mupdf_pages(paper), plumber_pages(paper)
        if len(a) != len(template["tiles"]) or len(b) != len(a):
            failures.append(f"{len(a)} pages, wanted {len(template['tiles'])}")
        for number, (by_mupdf, by_plumber) in enumerate(zip(a, b), 1):
            for name, read in (("mupdf", by_mupdf), ("plumber", by_plumber)):
                off = max(abs(x - y) for x, y in zip(read["mediabox_mm"], template["page_mm"]))
                if off > 0.01:
                    failures.append(f"page {number}: {name} reads paper of {read['mediabox_mm']}, wanted {template['page_mm']}")
                if "segs" not in read:
                    continue
                if len(wanted[number]) < 2:
                    failures.append(f"page {number}: no bars")
                for axis in "xy":
                    lines = [end - start for _, start, end in pdf_measure.merge_collinear(read["segs"], axis)]
                    for length in wanted[number]:
                        nearest = min(lines, key=lambda found: abs(found - length), default=0.0)
                        if abs(nearest - length) > 0.01:
                            failures.append(f"page {number}: {name} measures a bar of {length} mm as {nearest:.4f} along {axis}")
        one = reference["tiles"][0]
        job = {
            "tiles_pdf": paper,
            "tiles": template["tiles"],
            "overlap_mm": template["overlap_mm"],
            "reference": {
                "pdf": os.path.abspath(os.path.join(whole, reference["pdf"])),
                "page": 1,
                "origin_mm": [o - c for o, c in zip(one["origin_mm"], one["clip_mm"])],
            },
            "ignore_colors": IGNORED,
            "tol_mm": 0.05,
        }
        stitched = pdf_stitch.run(job)
        # Tiles without a line to cut are not printed, so that the whole box is not covered; its lines are.
        failures += stitched["failures"]
        if stitched["reference_length_mm"] < 100:
            failures.append("nothing to compare with")
    return failures, stitched


def main():
    arguments = sys.argv[1:]
    option = lambda name: arguments[arguments.index(name) + 1] if name in arguments else None
    tiles, whole = arguments[0], arguments[1]
    factors = [float(f) for f in (option("--printer") or "1,1").split(",")]
    lists = [json.load(open(os.path.join(folder, "templates.json"))) for folder in (tiles, whole)]
    references = {template["name"]: template for template in lists[1]["templates"]}
    report, bad = [], 0
    for template in lists[0]["templates"]:
        if option("--only") and option("--only") not in template["pdf"]:
            continue
        failures, stitched = check(tiles, whole, template, references[template["name"]], factors)
        bad += len(failures)
        report.append(dict(name=template["name"], tiles=len(template["tiles"]), hausdorff_mm=stitched["hausdorff_mm"], failures=failures[:6]))
    if not report:
        bad += 1
    print(json.dumps(report, indent=1))
    sys.exit(1 if bad else 0)


if __name__ == "__main__":
    main()
