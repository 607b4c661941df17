package boundwright.web.page;

import boundwright.quantity.PlainText;
import boundwright.quantity.RefusedException;
import boundwright.quantity.WrittenDay;
import boundwright.quantity.WrittenNumber;
import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.time.LocalDate;
import java.util.Locale;
import java.util.function.Consumer;

/** Reads what a form or an address carries, and says in words what cannot be read. */
public final class Form {
  private static final String PUT = "boundwright.put.";

  private Form() {}

  /** What was put in place of a field, or else this. */
  static String holds(Context ctx, String name, String otherwise) {
    String put = ctx.attribute(PUT + name);
    return put == null ? otherwise : put;
  }

  /** From now on {@link #text} answers this of the field, whatever was sent. */
  static void put(Context ctx, String name, String value) {
    ctx.attribute(PUT + name, value);
  }

  /** The name of a file that was sent, without folders, at most 120 characters. */
  public static String fileName(UploadedFile file) {
    String name = file.filename();
    String last = PlainText.checked(name).substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    return last.length() <= 120 ? last : last.substring(last.length() - 120);
  }

  /** A field of the form sent, or of the address; empty if absent. */
  public static String text(Context ctx, String name) {
    String put = ctx.attribute(PUT + name);
    if (put != null) {
      return put;
    }
    String sent = "POST".equals(ctx.req().getMethod()) ? ctx.formParam(name) : ctx.queryParam(name);
    return sent == null ? "" : sent.strip();
  }

  /** Whether the field was sent at all. */
  public static boolean has(Context ctx, String name) {
    return ("POST".equals(ctx.req().getMethod()) ? ctx.formParam(name) : ctx.queryParam(name)) != null;
  }

  /** A whole number. */
  public static int whole(String what, String text) {
    try {
      return Integer.parseInt(text.strip());
    } catch (NumberFormatException e) {
      throw new RefusedException("The " + what + " '" + text.strip() + "' is not a whole number. Write digits, for example 4.");
    }
  }

  /** The number of something kept, as it was sent; -1, which nothing has, for what is none. */
  public static long id(String text) {
    return text.matches("\\d{1,18}") ? Long.parseLong(text) : -1;
  }

  /** A number as {@link WrittenNumber} reads it. */
  public static double number(String what, String text) {
    return WrittenNumber.read(text)
        .orElseThrow(() -> new RefusedException("The " + what + " '" + text.strip() + "' is not a number. Write it as 0.9 or 8.5."));
  }

  /** A day written 2026-04-12, or {@code today} if nothing was written. */
  public static LocalDate date(String text, LocalDate today) {
    if (text.isBlank()) {
      return today;
    }
    LocalDate date = anyDate(text);
    if (date.isAfter(today)) {
      throw new RefusedException("The date " + date + " lies after today, " + today + ". Enter the day on which it was done.");
    }
    return date;
  }

  /** A day as {@link WrittenDay} reads it, also one to come. */
  public static LocalDate anyDate(String text) {
    return WrittenDay.read(text);
  }

  /** One of the names of an enumeration, in either case. */
  public static <E extends Enum<E>> E oneOf(Class<E> type, String what, String text) {
    for (E e : type.getEnumConstants()) {
      if (e.name().equals(text.toUpperCase(Locale.ROOT))) {
        return e;
      }
    }
    throw new RefusedException("The " + what + " '" + text + "' is not one that the page offers. Choose one from the list.");
  }

  /** What was sent under a name, one of the names of an enumeration, or {@code otherwise} where nothing was. */
  public static <E extends Enum<E>> E oneOf(Context ctx, String name, Class<E> type, E otherwise) {
    return has(ctx, name) ? oneOf(type, name, text(ctx, name)) : otherwise;
  }

  /** A name as part of a file's name: small letters, digits and hyphens; {@code athlete} if nothing is left. */
  public static String fileName(String name) {
    String plain = plain(name);
    return plain.isEmpty() ? "athlete" : plain;
  }

  /** A name in small letters, digits and hyphens; empty if nothing is left. */
  public static String plain(String name) {
    return name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
  }

  /** The sentence with which {@code read} refuses {@code text}, or empty if it takes it. */
  public static String refusal(String text, Consumer<String> read) {
    try {
      read.accept(text);
      return "";
    } catch (RefusedException e) {
      return String.valueOf(e.getMessage());
    }
  }
}
