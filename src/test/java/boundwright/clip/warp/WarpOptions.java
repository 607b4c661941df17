package boundwright.clip.warp;

import boundwright.quantity.RefusedException;
import java.util.List;

/**
 * How a still film is looked at.
 *
 * @param width of the picture made [px], even
 * @param height [px], even
 * @param viewDeg how wide the still film looked [degrees]; for real film a guess
 * @param scale pixels of the made picture for one of the still one, before the zoom
 * @param follow whether the camera follows the athlete
 * @param tiltDeg by how much it nods up and down over the film [degrees]
 * @param zoom focal length at the end over that at the beginning
 * @param shake_px standard deviation of the shake in either direction [px]
 * @param shutter_s from reading the first row to reading the last [s]
 * @param seed of the shake
 */
record WarpOptions(
    int width, int height, double viewDeg, double scale, boolean follow, double tiltDeg, double zoom, double shake_px, double shutter_s, long seed) {

  static WarpOptions of(List<String> words, int sourceWidth) {
    int w = sourceWidth >= 1200 ? 960 : sourceWidth * 10 / 16 / 2 * 2;
    int h = sourceWidth >= 1200 ? 600 : w * 3 / 4 / 2 * 2;
    WarpOptions o = new WarpOptions(w, h, 60, 1, true, 0, 1, 0, 0, 1);
    for (String word : words) {
      String[] part = word.split("=", 2);
      try {
        o = o.with(part[0], part[1]);
      } catch (IllegalArgumentException | ArrayIndexOutOfBoundsException e) {
        throw new RefusedException("\"" + word + "\" is no option: size=960x600 view=60 scale=1 follow=yes tilt=0 zoom=1 shake=0 shutter=0 (ms) seed=1.", e);
      }
    }
    return o;
  }

  private WarpOptions with(String name, String value) {
    double v = name.equals("size") || name.equals("follow") ? 0 : Double.parseDouble(value);
    return switch (name) {
      case "size" -> new WarpOptions(Integer.parseInt(value.split("x")[0]), Integer.parseInt(value.split("x")[1]), viewDeg, scale, follow, tiltDeg, zoom, shake_px, shutter_s, seed);
      case "view" -> new WarpOptions(width, height, v, scale, follow, tiltDeg, zoom, shake_px, shutter_s, seed);
      case "scale" -> new WarpOptions(width, height, viewDeg, v, follow, tiltDeg, zoom, shake_px, shutter_s, seed);
      case "follow" -> new WarpOptions(width, height, viewDeg, scale, value.equals("yes"), tiltDeg, zoom, shake_px, shutter_s, seed);
      case "tilt" -> new WarpOptions(width, height, viewDeg, scale, follow, v, zoom, shake_px, shutter_s, seed);
      case "zoom" -> new WarpOptions(width, height, viewDeg, scale, follow, tiltDeg, v, shake_px, shutter_s, seed);
      case "shake" -> new WarpOptions(width, height, viewDeg, scale, follow, tiltDeg, zoom, v, shutter_s, seed);
      case "shutter" -> new WarpOptions(width, height, viewDeg, scale, follow, tiltDeg, zoom, shake_px, v / 1000, seed);
      case "seed" -> new WarpOptions(width, height, viewDeg, scale, follow, tiltDeg, zoom, shake_px, shutter_s, (long) v);
      default -> throw new IllegalArgumentException(name);
    };
  }
}
