package boundwright.footfall;

import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads what a coach writes: {@code R} and {@code L} in either case, spaces anywhere, {@code xN} (or {@code ×N})
 * repeating what stands before it. What stands before it is the letters since the last repeat, comma or bracket:
 * {@code RRL x3}, {@code R R L x3} and {@code (RRL)x3} are the same nine contacts; {@code RR, L x3} is R R L L L. A
 * letter or a bracket alone can be repeated too: {@code R x10}, {@code (RL x2 R)x3}.
 */
final class SequenceParser {
  private static final int LONGEST_TEXT = 400;

  private final String source;
  private int at;

  private SequenceParser(String source) {
    this.source = source;
  }

  static Sequence parse(String text) {
    if (text.isBlank()) {
      throw new RefusedException(
          "The sequence is empty: 0 contacts, and it needs 1 to " + Sequence.MAX_CONTACTS
              + ". Write feet as R and L, for example RRL x3.");
    }
    if (text.length() > LONGEST_TEXT) {
      throw new RefusedException(
          "The sequence is " + text.length() + " characters long; the limit is " + LONGEST_TEXT
              + ". Use xN to repeat, for example RL x10.");
    }
    SequenceParser parser = new SequenceParser(text);
    List<Foot> feet = parser.items(0);
    if (feet.isEmpty()) {
      throw parser.wrong(0, "has no contact; write feet as R and L");
    }
    return new Sequence(feet, tidy(text));
  }

  private List<Foot> items(int depth) {
    List<Foot> done = new ArrayList<>();
    List<Foot> group = new ArrayList<>();
    while (at < source.length()) {
      char c = source.charAt(at);
      if (Character.isWhitespace(c)) {
        at++;
      } else if (c == 'R' || c == 'r' || c == 'L' || c == 'l') {
        group.add(Character.toUpperCase(c) == 'R' ? Foot.RIGHT : Foot.LEFT);
        at++;
      } else if (c == ',') {
        at++;
        done.addAll(group);
        group = new ArrayList<>();
      } else if (c == '(') {
        int open = at++;
        if (depth >= 8) {
          throw wrong(open, "opens more brackets than anyone needs; use at most 8 inside each other");
        }
        done.addAll(group);
        group = new ArrayList<>(items(depth + 1));
        if (at >= source.length()) {
          throw wrong(open, "opens a bracket that is never closed; add )");
        }
        at++;
        if (group.isEmpty()) {
          throw wrong(open, "opens an empty bracket; write feet inside, as in (RRL)x3");
        }
        if (!repeatFollows()) {
          done.addAll(group);
          group = new ArrayList<>();
        }
      } else if (c == ')') {
        if (depth == 0) {
          throw wrong(at, "closes a bracket that was never opened; take it out or add (");
        }
        break;
      } else if (c == 'x' || c == 'X' || c == '×') {
        repeat(group);
        done.addAll(group);
        group = new ArrayList<>();
      } else {
        throw wrong(at, "is not a foot; use R, L, spaces, and xN to repeat, as in RRL x3");
      }
      tooMany(done.size() + group.size());
    }
    done.addAll(group);
    return done;
  }

  private boolean repeatFollows() {
    int look = at;
    while (look < source.length() && Character.isWhitespace(source.charAt(look))) {
      look++;
    }
    return look < source.length() && "xX×".indexOf(source.charAt(look)) >= 0;
  }

  private void repeat(List<Foot> group) {
    int sign = at++;
    while (at < source.length() && Character.isWhitespace(source.charAt(at))) {
      at++;
    }
    int digits = at;
    while (at < source.length() && source.charAt(at) >= '0' && source.charAt(at) <= '9') {
      at++;
    }
    if (at == digits) {
      throw wrong(sign, "is neither R nor L, and to repeat it needs a number after it, as in RRL x3");
    }
    if (group.isEmpty()) {
      throw wrong(sign, "repeats nothing; put the feet before it, as in RRL x3");
    }
    int times = at - digits > 3 ? Integer.MAX_VALUE : Integer.parseInt(source.substring(digits, at));
    if (times == 0) {
      throw wrong(digits, "repeats 0 times, which leaves 0 contacts; repeat at least once");
    }
    if ((long) times * group.size() > Sequence.MAX_CONTACTS) {
      throw wrong(
          digits,
          "makes " + (times == Integer.MAX_VALUE ? "far too many" : String.valueOf((long) times * group.size()))
              + " contacts; the limit is " + Sequence.MAX_CONTACTS);
    }
    List<Foot> once = List.copyOf(group);
    for (int i = 1; i < times; i++) {
      group.addAll(once);
    }
  }

  private void tooMany(int contacts) {
    if (contacts > Sequence.MAX_CONTACTS) {
      throw wrong(
          Math.min(at, source.length()) - 1,
          "brings the sequence to " + contacts + " contacts; the limit is " + Sequence.MAX_CONTACTS
              + ". Cut it into sets of " + Sequence.SET_CONTACTS);
    }
  }

  /** Names the character and draws a caret beneath it. */
  private RefusedException wrong(int index, String why) {
    String shown = source.replaceAll("[\\s\\p{Cntrl}]", " ");
    return new RefusedException(
        "Character " + (index + 1) + " ('" + new String(Character.toChars(shown.codePointAt(index))) + "') " + why + ".\n  " + shown + "\n  "
            + " ".repeat(index) + "^");
  }

  private static String tidy(String text) {
    return text.strip()
        .replaceAll("\\s+", " ")
        .replace('r', 'R')
        .replace('l', 'L')
        .replaceAll("[xX×] ?(?=\\d)", "x");
  }
}
