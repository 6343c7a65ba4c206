"""The same cutouts in SVG, PDF and DXF.   usage: same_cutouts.py FOLDER
FOLDER is what `faceline draw --dxf` wrote. Every drawn cutout of the sheets that is also in a file for machines is read
back from all three by readers that share no code: svgelements, PyMuPDF, ezdxf. Its box in model millimetres must agree
to 0.01 mm."""
import glob, json, math, os, re, sys
import ezdxf, ezdxf.bbox, pymupdf
from lxml import etree
from svgelements import Matrix, Path

MM = 25.4 / 72
FILES = {"counter": "cut-*counter*.dxf", "substrate": "cut-*substrate*.dxf", "front-board": "cut-*board-front-*.dxf"}
SHEETS = ("substrate-template", "board-templates", "counter-sheet", "front-elevation")


def cutouts(sheet):
    """Fitting, plane, box on the paper, scale and origin of each cutout that is drawn."""
    for node in etree.parse(sheet).getroot().iter("{*}path"):
        if node.get("class") != "cutout" or node.get("stroke") in (None, "none"):
            continue
        view = next((up for up in node.iterancestors() if up.get("data-scale")), None)
        if view is None:
            continue
        drawn, scale = Path(node.get("d")), float(view.get("data-scale"))
        origin = [float(v) for v in view.get("data-origin-mm").split(",")]
        box, own = drawn.bbox(), None
        if node.get("data-leg-turn"):
            # Over several legs: back into the coordinates of its own leg, in which its parts are cut. y runs down on paper.
            x, y = (float(v) for v in node.get("data-leg-origin-mm").split(","))
            on_paper = (origin[0] + x * scale, origin[1] - y * scale)
            back = Matrix.translate(-on_paper[0], -on_paper[1]) * Matrix.rotate(math.radians(float(node.get("data-leg-turn"))))
            own = model((drawn * back).bbox(), scale, (0.0, 0.0))
        yield node.get("data-fitting"), node.get("data-plane"), box, scale, origin, own


def model(box, scale, origin):
    x0, y0, x1, y1 = box
    return (x0 - origin[0]) / scale, (origin[1] - y1) / scale, (x1 - origin[0]) / scale, (origin[1] - y0) / scale


def drawn_boxes(page):
    """Boxes of what a PDF page strokes, on the curve and not on its handles; mm, y down."""
    height = page.rect.height
    for drawing in page.get_drawings():
        xs, ys = [], []
        for item in drawing["items"]:
            if item[0] == "l":
                points = item[1:3]
            elif item[0] == "re":
                points = [item[1].tl, item[1].br]
            elif item[0] == "qu":
                points = [item[1].ul, item[1].ur, item[1].lr, item[1].ll]
            else:
                a, b, c, e = item[1:5]
                mix = lambda t, p: (1 - t) ** 3 * a[p] + 3 * (1 - t) ** 2 * t * b[p] + 3 * (1 - t) * t * t * c[p] + t ** 3 * e[p]
                points = [(mix(k / 64, 0), mix(k / 64, 1)) for k in range(65)]
            xs += [p[0] * MM for p in points]
            ys += [p[1] * MM for p in points]
        if xs:
            yield min(xs), min(ys), max(xs), max(ys)


def loops(file):
    """Boxes of closed cuts, and the sides of all of them, mm."""
    document = ezdxf.readfile(file)
    k = {1: 25.4, 4: 1.0}[document.header["$INSUNITS"]]
    boxes, upright, level = [], [], []
    for entity in document.modelspace().query('*[layer=="cut"]'):
        box = ezdxf.bbox.extents([entity], fast=False)
        boxes.append((box.extmin.x * k, box.extmin.y * k, box.extmax.x * k, box.extmax.y * k))
        if entity.dxftype() == "LWPOLYLINE":
            points = [(x * k, y * k, b) for x, y, b in entity.get_points("xyb")]
            for (x0, y0, bulge), (x1, y1, _) in zip(points, points[1:] + points[:1]):
                if not bulge and abs(x0 - x1) < 1e-6:
                    upright.append(x0)
                if not bulge and abs(y0 - y1) < 1e-6:
                    level.append(y0)
    return boxes, upright, level


def near(a, b, tolerance=0.01):
    return max(abs(x - y) for x, y in zip(a, b)) <= tolerance


def main():
    folder = sys.argv[1]
    sheets = sorted(glob.glob(os.path.join(folder, "[0-9]*.svg")))
    [document] = [file for file in glob.glob(os.path.join(folder, "*.pdf"))]
    failures, compared = [], []
    with pymupdf.open(document) as pdf:
        if len(pdf) != len(sheets):
            failures.append(f"{len(pdf)} pages of {len(sheets)} sheets")
        for number, sheet in enumerate(sheets):
            name = os.path.basename(sheet)
            # An elevation of several legs unfolds them: its faces stand beside one another, not in a leg's coordinates.
            if not any(word in name for word in SHEETS) or ("-leg-" in name and "elevation" in name):
                continue
            pages = None
            for fitting, plane, box, scale, origin, in_leg in cutouts(sheet):
                if plane not in FILES:
                    continue
                own = model(box, scale, origin)
                pages = pages if pages is not None else list(drawn_boxes(pdf[number]))
                in_pdf = [model(found, scale, origin) for found in pages]
                if not any(near(own, found) for found in in_pdf):
                    failures.append(f"{name}: the PDF has no cutout of {fitting} at {[round(v, 3) for v in own]}")
                own = in_leg or own
                parts = [loops(file) for file in glob.glob(os.path.join(folder, FILES[plane]))]
                x0, y0, x1, y1 = own
                closed = any(near(own, found) for boxes, _, _ in parts for found in boxes)
                among = lambda value, values: any(abs(value - v) <= 0.01 for v in values)
                if "board-templates" in name:
                    # These are drawn each from its own corner: the sizes must agree.
                    size = lambda b: (b[2] - b[0], b[3] - b[1])
                    closed = any(near(size(own), size(found)) for boxes, _, _ in parts for found in boxes)
                # One that is open at an edge is part of the outline there, whose edge goes on beside it.
                open_ = any(among(x0, upright) and among(x1, upright) and among(y0, level) and among(y1, level) for _, upright, level in parts)
                if not closed and not open_:
                    failures.append(f"{name}: no DXF has the cutout of {fitting} in {plane} at {[round(v, 3) for v in own]}")
                compared.append(dict(sheet=name, fitting=fitting, plane=plane, box_mm=[round(v, 4) for v in own], closed=closed))
    print(json.dumps(dict(compared=compared, failures=failures), indent=1))
    sys.exit(1 if failures or not compared else 0)


if __name__ == "__main__":
    main()
