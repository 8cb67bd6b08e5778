"""Prints what trimesh finds in a mesh file: watertight, winding, Euler number, volume, unit."""

import sys

import trimesh

mesh = trimesh.load(sys.argv[1], force="mesh")
print(mesh.is_watertight, mesh.is_winding_consistent, mesh.euler_number, mesh.volume, mesh.units)
