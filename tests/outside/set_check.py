"""Check the PDF of a set.   usage: set_check.py set.pdf FOLDER
FOLDER holds the same sheets as SVG. Two readers: PyMuPDF and pdfplumber. Each page is its sheet's size to 0.01 mm, has a
bookmark, can be searched for every word of its sheet, and carries no date; viewers are asked not to scale it."""
import glob, os, re, sys
import pdfplumber, pymupdf
from lxml import etree

MM = 25.4 / 72


def texts(sheet):
    root = etree.parse(sheet).getroot()
    size = [float(root.get(name).removesuffix("mm")) for name in ("width", "height")]
    return size, ["".join(node.itertext()) for node in root.iter("{*}text")]


def plain(text):
    return re.sub(r"\s+", "", text)


def main():
    failures = []
    sheets = sorted(glob.glob(os.path.join(sys.argv[2], "[0-9]*.svg")))
    with pymupdf.open(sys.argv[1]) as a, pdfplumber.open(sys.argv[1]) as b:
        if not len(a) == len(b.pages) == len(sheets) == len(a.get_toc()):
            failures.append(f"{len(a)} and {len(b.pages)} pages, {len(a.get_toc())} bookmarks, {len(sheets)} sheets")
        if a.metadata["creationDate"] or a.metadata["modDate"] or not a.metadata["title"]:
            failures.append(f"metadata {a.metadata}")
        preferences = a.xref_get_key(a.pdf_catalog(), "ViewerPreferences")[1]
        if "/PrintScaling/None" not in preferences.replace(" ", ""):
            failures.append(f"viewer preferences {preferences}")
        for number, (sheet, p, q) in enumerate(zip(sheets, a, b.pages)):
            size, words = texts(sheet)
            for reader, found in (("mupdf", (p.mediabox.width * MM, p.mediabox.height * MM)), ("plumber", (float(q.width) * MM, float(q.height) * MM))):
                if max(abs(x - y) for x, y in zip(found, size)) > 0.01:
                    failures.append(f"{sheet}: {reader} reads {found}, wanted {size}")
            page = plain(p.get_text())
            lost = [text for text in words if plain(text) not in page]
            if lost:
                failures.append(f"{sheet}: {len(lost)} of {len(words)} texts can't be found, as {lost[0]!r}")
            if a.get_toc()[number][2] != number + 1:
                failures.append(f"{sheet}: its bookmark leads to page {a.get_toc()[number][2]}")
            if not {font[3].split("+")[-1] for font in p.get_fonts()} <= {"FacelineSans-Regular", "FacelineSans-SemiBold"}:
                failures.append(f"{sheet}: fonts {p.get_fonts()}")
    for failure in failures:
        print(failure)
    sys.exit(1 if failures else 0)


if __name__ == "__main__":
    main()
