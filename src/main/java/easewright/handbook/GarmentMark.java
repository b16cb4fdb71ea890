package easewright.handbook;

import java.util.Map;
import java.util.Optional;

/**
 * The outline emphasised to mark a place, in the units of {@link GarmentDrawing}.
 *
 * @param line SVG path data, for both left and right
 * @param area whether to shade the inside instead
 */
record GarmentMark(String line, boolean area) {
  private static final Map<String, GarmentMark> MARKS =
      Map.ofEntries(
          area("strap", "M178 25 L198 22 L202 65 L176 71 Z M302 25 L282 22 L278 65 L304 71 Z"),
          line("shoulder", "M178 25 L198 22 M302 25 L282 22"),
          line("shoulder-seam", "M176 71 L202 65 M304 71 L278 65"),
          line("armhole", "M176 71 C175 120 164 156 140 170 M304 71 C305 120 316 156 340 170"),
          line(
              "front-armhole", "M176 71 C175 120 164 156 140 170 M304 71 C305 120 316 156 340 170"),
          area(
              "underarm",
              "M128 170 Q128 156 142 156 Q156 156 156 170 Q156 184 142 184 Q128 184 128 170 Z"
                  + " M324 170 Q324 156 338 156 Q352 156 352 170 Q352 184 338 184 Q324 184 324 170 Z"),
          line("bust-line", "M144 205 L336 205"),
          line("side-seam", "M140 170 C144 215 146 258 148 300 M340 170 C336 215 334 258 332 300"),
          area(
              "side",
              "M140 170 C144 215 146 258 148 300 L172 305 C170 258 166 205 160 157 Z"
                  + " M340 170 C336 215 334 258 332 300 L308 305 C310 258 314 205 320 157 Z"),
          line("front-length-line", "M147 262 L333 262"),
          line("underband-seam", "M148 300 Q240 322 332 300"),
          area("casing", "M149 309 Q240 332 331 309 L330 337 Q240 360 150 337 Z"),
          area("underband", "M148 300 Q240 322 332 300 L330 345 Q240 369 150 345 Z"),
          line("neckline", "M202 65 C204 115 220 148 240 148 C260 148 276 115 278 65"),
          line(
              "shaped-seam",
              "M169 125 C180 160 191 185 192 205 C193 235 196 270 198 309"
                  + " M311 125 C300 160 289 185 288 205 C287 235 284 270 282 309"),
          line("centre-front", "M240 148 L240 357"),
          line("strap-end", "M206 92 L180 97 M274 92 L300 97"),
          line("back-armhole", "M180 97 C176 135 162 158 140 170 M300 97 C304 135 318 158 340 170"),
          line("back-length-line", "M146 240 L334 240"),
          area(
              "back-strap-point",
              "M180 94 Q180 81 193 81 Q206 81 206 94 Q206 107 193 107 Q180 107 180 94 Z"
                  + " M274 94 Q274 81 287 81 Q300 81 300 94 Q300 107 287 107 Q274 107 274 94 Z"),
          line("back-neckline", "M206 92 C210 126 222 146 240 146 C258 146 270 126 274 92"),
          line("centre-back", "M240 146 L240 309"),
          line("underband-centre-back", "M240 309 L240 354"));

  static Optional<GarmentMark> of(String place) {
    return Optional.ofNullable(MARKS.get(place));
  }

  private static Map.Entry<String, GarmentMark> line(String place, String line) {
    return Map.entry(place, new GarmentMark(line, false));
  }

  private static Map.Entry<String, GarmentMark> area(String place, String outline) {
    return Map.entry(place, new GarmentMark(outline, true));
  }
}
