"""Adds what a head reads to the ONNX graph of a model that is written already."""
import numpy as np, onnx
from onnx import TensorProto, helper, numpy_helper


class Part:
    """The nodes of one head; their names begin with that of the head."""

    def __init__(self, file, name):
        self.file, self.name, self.graph = file, name, onnx.load(file)
        self.nodes, self.start = [], []

    def number(self, name, value):
        self.start.append(numpy_helper.from_array(np.asarray(value), f"{self.name}/{name}"))
        return f"{self.name}/{name}"

    def node(self, op, inputs, name, **attributes):
        self.nodes.append(helper.make_node(op, inputs, [f"{self.name}/{name}"], name=f"{self.name}/{name}", **attributes))
        return f"{self.name}/{name}"

    def write(self, op, inputs, shape, more_inputs=(), **attributes):
        """Adds the nodes, the last of which is the output that has the head's name."""
        self.nodes.append(helper.make_node(op, inputs, [self.name], name=f"{self.name}/said", **attributes))
        g = self.graph.graph
        g.node.extend(self.nodes), g.initializer.extend(self.start)
        g.input.extend(helper.make_tensor_value_info(name, TensorProto.FLOAT, axes) for name, axes in more_inputs)
        g.output.append(helper.make_tensor_value_info(self.name, TensorProto.FLOAT, shape))
        onnx.checker.check_model(self.graph)
        onnx.save(self.graph, self.file)
