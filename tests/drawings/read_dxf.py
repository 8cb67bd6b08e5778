"""Prints what ezdxf finds in a DXF file: the audit, then a line for every circle, polyline and text."""

import sys

import ezdxf
from ezdxf import bbox

drawing = ezdxf.readfile(sys.argv[1])
audit = drawing.audit()
print("AUDIT", len(audit.errors), len(audit.fixes))
for layer in drawing.layers:
    print("LAYER", layer.dxf.name, layer.dxf.linetype)
for item in drawing.modelspace():
    kind = item.dxftype()
    if kind == "CIRCLE":
        print("CIRCLE", item.dxf.layer, item.dxf.center.x, item.dxf.center.y, item.dxf.radius)
    elif kind == "ARC":
        print("ARC", item.dxf.layer, item.dxf.radius, item.dxf.start_angle, item.dxf.end_angle)
    elif kind == "POLYLINE":
        box = bbox.extents([item], fast=True)
        bends = sum(1 for vertex in item.vertices if vertex.dxf.bulge)
        print("POLYLINE", item.dxf.layer, item.is_closed, bends, box.size.x, box.size.y)
    elif kind == "TEXT":
        print("TEXT", item.plain_text())
