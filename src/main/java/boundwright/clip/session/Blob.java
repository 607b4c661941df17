package boundwright.clip.session;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/**
 * Something that moves in a small picture, by its edges [small px], the last ones included.
 *
 * @param pixels how many of it move
 */
record Blob(int left, int top, int right, int bottom, int pixels) {
  /** Less high than this nobody could be told [small px]. */
  static final int LEAST_HIGH = 9;
  /** Limbs that the background hides in part are joined over such gaps [small px]. */
  private static final int GAP = 2;

  double x() {
    return (left + right + 1) / 2.0;
  }

  double y() {
    return (top + bottom + 1) / 2.0;
  }

  int wide() {
    return right - left + 1;
  }

  int high() {
    return bottom - top + 1;
  }

  private boolean couldBeSomebody() {
    return high() >= LEAST_HIGH && wide() <= 4 * high() && high() <= 8 * wide() && 8 * pixels >= wide() * high();
  }

  /** A body in parts, one above the other, is one. */
  private boolean standsOver(Blob o) {
    int common = Math.min(right, o.right) - Math.max(left, o.left) + 1;
    int gap = Math.max(top, o.top) - Math.min(bottom, o.bottom);
    return 2 * common >= Math.min(wide(), o.wide()) && gap <= 0.35 * Math.max(high(), o.high());
  }

  private Blob with(Blob o) {
    return new Blob(
        Math.min(left, o.left), Math.min(top, o.top), Math.max(right, o.right), Math.max(bottom, o.bottom), pixels + o.pixels);
  }

  /** Everything that moves and could be somebody. */
  static List<Blob> of(boolean[] moving, int width, int height) {
    boolean[] seen = new boolean[moving.length];
    List<Blob> all = new ArrayList<>();
    Deque<Integer> open = new ArrayDeque<>();
    for (int start = 0; start < moving.length; start++) {
      if (!moving[start] || seen[start]) {
        continue;
      }
      seen[start] = true;
      open.push(start);
      int l = width;
      int r = 0;
      int t = height;
      int b = 0;
      int n = 0;
      while (!open.isEmpty()) {
        int p = open.pop();
        int x = p % width;
        int y = Math.floorDiv(p, width);
        l = Math.min(l, x);
        r = Math.max(r, x);
        t = Math.min(t, y);
        b = Math.max(b, y);
        n++;
        for (int v = Math.max(0, y - GAP); v <= Math.min(height - 1, y + GAP); v++) {
          for (int u = Math.max(0, x - GAP); u <= Math.min(width - 1, x + GAP); u++) {
            int q = v * width + u;
            if (moving[q] && !seen[q]) {
              seen[q] = true;
              open.push(q);
            }
          }
        }
      }
      if (n >= 4) {
        all.add(new Blob(l, t, r, b, n));
      }
    }
    return joined(all).stream().filter(Blob::couldBeSomebody).toList();
  }

  private static List<Blob> joined(List<Blob> parts) {
    List<Blob> out = new ArrayList<>(parts);
    boolean again = true;
    while (again) {
      again = false;
      for (int i = 0; i < out.size() && !again; i++) {
        for (int j = i + 1; j < out.size() && !again; j++) {
          if (out.get(i).standsOver(out.get(j))) {
            out.set(i, out.get(i).with(out.remove(j)));
            again = true;
          }
        }
      }
    }
    return out;
  }
}
