package boundwright.store;

import boundwright.quantity.RefusedException;

/** Reads the words of the database back into the program's enumerations. */
final class Words {
  private Words() {}

  /** The constant called {@code word}; refuses one that this program does not know instead of guessing another. */
  static <E extends Enum<E>> E read(Class<E> type, String what, String word) {
    try {
      return Enum.valueOf(type, word);
    } catch (IllegalArgumentException e) {
      throw new RefusedException(
          "The database holds a " + what + " '" + word + "' that this program does not know. Nothing in it was changed."
              + " Run the program that wrote it, or put back your last backup.", e);
    }
  }
}
