package boundwright.store.rows;

import java.util.HashMap;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * The settings as they are kept: a row each, a number with its unit or a word. A setting that was never kept, because an older
 * program did not know it, has its default.
 */
public final class SettingRows {
  private record Row(String key, @Nullable Double number, @Nullable String word) {}

  private final Map<String, Row> kept = new HashMap<>();

  private SettingRows() {}

  /** All settings as they stand. */
  public static SettingRows read(Handle h) {
    SettingRows rows = new SettingRows();
    h.createQuery("SELECT key, number, word FROM setting")
        .map((r, c) -> new Row(r.getString("key"), Columns.number(r, "number"), r.getString("word")))
        .forEach(row -> rows.kept.put(row.key(), row));
    return rows;
  }

  /** A number in the unit that it is kept in. */
  public double number(String key, double otherwise) {
    Row row = kept.get(key);
    return row == null || row.number() == null ? otherwise : row.number();
  }

  /** A whole number; what is behind the point is left out. */
  public int whole(String key, int otherwise) {
    return (int) number(key, otherwise);
  }

  /** A word. */
  public String word(String key, String otherwise) {
    Row row = kept.get(key);
    return row == null || row.word() == null ? otherwise : row.word();
  }

  /** Keeps a number with its unit. */
  public static void keep(Handle h, String key, double number, String unit) {
    put(h, key, number, unit, null);
  }

  /** Keeps a word. */
  public static void keep(Handle h, String key, String word) {
    put(h, key, null, null, word);
  }

  private static void put(Handle h, String key, @Nullable Double number, @Nullable String unit, @Nullable String word) {
    h.createUpdate("INSERT INTO setting (key, number, unit, word) VALUES (:key, :number, :unit, :word)"
                + " ON CONFLICT (key) DO UPDATE SET number = excluded.number, unit = excluded.unit, word = excluded.word")
        .bind("key", key)
        .bind("number", number)
        .bind("unit", unit)
        .bind("word", word)
        .execute();
  }
}
