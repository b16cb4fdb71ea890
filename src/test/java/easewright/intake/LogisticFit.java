package easewright.intake;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Logistic regression by Newton's method (iteratively reweighted least squares), with a small
 * ridge, since what never occurs together would get infinite weights.
 */
final class LogisticFit {
  private static final double RIDGE = 0.5;
  private static final int STEPS = 50;

  private final List<double[]> features = new ArrayList<>();
  private final List<Boolean> outcomes = new ArrayList<>();

  /** Adds an example; its first feature should be 1. */
  void add(boolean outcome, double... of) {
    features.add(of);
    outcomes.add(outcome);
  }

  /** The weights of the features. */
  double[] weights() {
    int n = features.get(0).length;
    RealVector weights = new ArrayRealVector(n);
    for (int step = 0; step < STEPS; step++) {
      RealVector slope = weights.mapMultiply(-RIDGE);
      RealMatrix curve = new Array2DRowRealMatrix(n, n);
      for (int i = 0; i < n; i++) {
        curve.setEntry(i, i, RIDGE);
      }
      for (int e = 0; e < features.size(); e++) {
        RealVector x = new ArrayRealVector(features.get(e), false);
        double p = 1 / (1 + Math.exp(-weights.dotProduct(x)));
        slope = slope.add(x.mapMultiply((outcomes.get(e) ? 1 : 0) - p));
        curve = curve.add(x.outerProduct(x).scalarMultiply(p * (1 - p)));
      }
      RealVector change = new LUDecomposition(curve).getSolver().solve(slope);
      weights = weights.add(change);
      if (change.getNorm() < 1e-9) {
        break;
      }
    }
    return weights.toArray();
  }
}
