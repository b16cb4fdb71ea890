package easewright.saying;

import easewright.plan.CutPlan.Laid;
import easewright.plan.CutPlan.LaidPiece;
import io.quarkus.qute.TemplateExtension;
import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Positions on the drawing of a layout: across the cloth from left to right, along it downwards.
 * One drawing unit is one millimetre.
 */
@TemplateExtension
final class LayoutDrawing {
  private static final double CHARACTER = 0.58;

  private LayoutDrawing() {}

  static String px(double mm) {
    return BigDecimal.valueOf(mm).setScale(1, RoundingMode.HALF_UP).toPlainString();
  }

  /** A percentage of a length. */
  static String share(double mm, int hundredths) {
    return px(mm * hundredths / 100);
  }

  /** Font size of the legend: legible whatever the cloth width when the drawing fills a page. */
  static double fontSize(Laid laid) {
    return Math.max(laid.length().mm(), laid.layWidth().mm()) / 50;
  }

  static String viewBox(Laid laid) {
    double room = fontSize(laid) * 2;
    return px(-room / 2)
        + " "
        + px(-room)
        + " "
        + px(laid.layWidth().mm() + room)
        + " "
        + px(laid.length().mm() + 2 * room);
  }

  static String belowCloth(Laid laid) {
    return px(laid.length().mm() + fontSize(laid) * 1.3);
  }

  static String middleAlong(LaidPiece piece) {
    return px(piece.y() + piece.length() / 2);
  }

  static String middleAcross(LaidPiece piece) {
    return px(piece.x() + piece.width() / 2);
  }

  /** Whether a caption has more room along the cloth than across it. */
  static boolean upright(Laid laid, LaidPiece piece) {
    return piece.length() > piece.width() * 1.2;
  }

  /** Number and name; the number alone where the name would be too small to read. */
  static String caption(Laid laid, LaidPiece piece) {
    String whole = piece.number() + "  " + piece.name();
    return room(piece, whole) < fontSize(laid) * 0.6 ? String.valueOf(piece.number()) : whole;
  }

  static String textSize(Laid laid, LaidPiece piece) {
    return px(Math.min(fontSize(laid), room(piece, caption(laid, piece))));
  }

  private static double room(LaidPiece piece, String text) {
    double run = Math.max(piece.width(), piece.length());
    double high = Math.min(piece.width(), piece.length());
    return Math.min(high * 0.8, run * 0.9 / (text.length() * CHARACTER));
  }
}
