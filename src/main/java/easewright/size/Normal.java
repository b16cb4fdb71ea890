package easewright.size;

/** The standard normal distribution, fast enough for thousands of calls per request. */
final class Normal {
  private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

  private Normal() {}

  static double density(double x) {
    return Math.exp(-0.5 * x * x) / ROOT_TWO_PI;
  }

  /**
   * The cumulative distribution by Hart's rational function (Hart 1968, in West 2005, "Better
   * approximations to cumulative normal functions", Wilmott), absolute error below 1e-14.
   */
  static double below(double x) {
    double a = Math.abs(x);
    if (a > 37) {
      return x > 0 ? 1 : 0;
    }
    double tail;
    double bell = Math.exp(-0.5 * a * a);
    if (a < 7.07106781186547) {
      double top = 3.52624965998911e-02 * a + 0.700383064443688;
      top = top * a + 6.37396220353165;
      top = top * a + 33.912866078383;
      top = top * a + 112.079291497871;
      top = top * a + 221.213596169931;
      top = top * a + 220.206867912376;
      double bottom = 8.83883476483184e-02 * a + 1.75566716318264;
      bottom = bottom * a + 16.064177579207;
      bottom = bottom * a + 86.7807322029461;
      bottom = bottom * a + 296.564248779674;
      bottom = bottom * a + 637.333633378831;
      bottom = bottom * a + 793.826512519948;
      bottom = bottom * a + 440.413735824752;
      tail = bell * top / bottom;
    } else {
      tail = bell / (a + 1 / (a + 2 / (a + 3 / (a + 4 / (a + 0.65))))) / ROOT_TWO_PI;
    }
    return x > 0 ? 1 - tail : tail;
  }
}
