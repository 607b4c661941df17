package boundwright.track;

import boundwright.flight.Rep;
import boundwright.quantity.RefusedException;
import java.util.List;

/** What somebody did on a phone, with the identity that the phone gave it. */
public sealed interface Deed {
  /** 32 hexadecimal digits, made on the phone; the same deed is done once, however often it is sent. */
  String token();

  /** Whose page it was done on. */
  long athleteId();

  /** When. */
  Made made();

  /**
   * A rep was done.
   *
   * @param rep what happened; its number is ignored, and its day is that of {@code made}
   */
  record Done(String token, Rep rep, Made made) implements Deed {
    /** Refuses a token of another form. */
    public Done {
      check(token);
    }

    @Override
    public long athleteId() {
      return rep.athleteId();
    }
  }

  /**
   * A rep was taken back.
   *
   * @param of its token or its number
   */
  record TakenBack(String token, long athleteId, String of, Made made) implements Deed {
    /** Refuses a token of another form. */
    public TakenBack {
      check(token);
      checkOf(of);
    }
  }

  /**
   * A rep was another athlete's.
   *
   * @param of its token or its number
   * @param to who did it
   */
  record HandedOver(String token, long athleteId, String of, long to, Made made) implements Deed {
    /** Refuses a token of another form. */
    public HandedOver {
      check(token);
      checkOf(of);
    }
  }

  /**
   * What was seen of a rep's technique, said after it was logged.
   *
   * @param of its token or its number
   * @param looked whether it was looked at
   * @param faults what was wrong, none is clean; empty if it was not looked at
   */
  record LookedAt(String token, long athleteId, String of, boolean looked, List<String> faults, Made made) implements Deed {
    /** Refuses a token of another form. */
    public LookedAt {
      check(token);
      checkOf(of);
      faults = List.copyOf(faults);
    }
  }

  /** Whether this is the form of a token. */
  static boolean isToken(String text) {
    return text.matches("[0-9a-f]{32}");
  }

  private static void check(String token) {
    if (!isToken(token)) {
      throw new RefusedException("An entry has the token '" + token + "', which is not 32 hexadecimal digits, so it was not kept. Enter it again.");
    }
  }

  private static void checkOf(String of) {
    if (!isToken(of) && !of.matches("\\d{1,18}")) {
      throw new RefusedException("An entry speaks of the rep '" + of + "', which is neither a token nor a number, so it was not kept. Enter it again.");
    }
  }
}
