package boundwright.cli.backup;

import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.store.backup.Everything;
import boundwright.store.backup.EverythingInto;
import boundwright.store.backup.Restore;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The file of {@code export --everything}: every field of every table as JSON, see {@code docs/formats-json.md}. Written and read row by row. */
public final class EverythingFile {
  private static final String FORMAT = "boundwright everything 1";

  private static final String NO_FILE =
      "This is not a whole file of boundwright export --everything, so nothing was taken. Export it again; reps as CSV are taken without --everything.";

  private EverythingFile() {}

  /** Writes it. The writer is flushed, not closed. */
  public static int write(Workbench bench, Writer out) throws IOException {
    try (JsonGenerator json = new JsonFactory().createGenerator(out)) {
      json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
      json.writeStartObject();
      json.writeStringField("format", FORMAT);
      int rows = bench.tellEverything(new Writing(json));
      json.writeEndObject();
      json.writeEndObject();
      json.writeRaw('\n');
      return rows;
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static final class Writing implements Everything.Listener {
    private final JsonGenerator json;
    private boolean inTable;
    private boolean inNumbers;

    Writing(JsonGenerator json) {
      this.json = json;
    }

    private interface Step {
      void run() throws IOException;
    }

    private static void io(Step step) {
      try {
        step.run();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    @Override
    public void version(int version) {
      io(
          () -> {
            json.writeNumberField("version", version);
            json.writeObjectFieldStart("tables");
          });
    }

    @Override
    public void table(String name) {
      io(
          () -> {
            if (inTable) {
              json.writeEndArray();
            }
            json.writeRaw('\n');
            json.writeArrayFieldStart(name);
          });
      inTable = true;
    }

    @Override
    public void row(Map<String, @Nullable Object> values) {
      io(
          () -> {
            json.writeRaw('\n');
            json.writeStartObject();
            for (Map.Entry<String, @Nullable Object> e : values.entrySet()) {
              json.writeFieldName(e.getKey());
              value(e.getValue());
            }
            json.writeEndObject();
          });
    }

    private void value(@Nullable Object value) throws IOException {
      if (value == null) {
        json.writeNull();
      } else if (value instanceof Double d) {
        json.writeNumber(d);
      } else if (value instanceof Number n) {
        json.writeNumber(n.longValue());
      } else if (value instanceof byte[] bytes) {
        json.writeBinary(bytes);
      } else {
        json.writeString(String.valueOf(value));
      }
    }

    @Override
    public void number(String table, long largest) {
      io(
          () -> {
            if (!inNumbers) {
              json.writeEndArray();
              json.writeEndObject();
              json.writeRaw('\n');
              json.writeObjectFieldStart("numbers");
            }
            json.writeNumberField(table, largest);
          });
      inNumbers = true;
    }
  }

  /**
   * Reads it into a folder without athletes.
   *
   * @throws RefusedException if it is no such file or the folder holds a squad; nothing was changed then
   */
  public static Restore.Result read(Restore into, Reader in) throws IOException {
    try (JsonParser json = new JsonFactory().createParser(in)) {
      expect(json.nextToken() == JsonToken.START_OBJECT && "format".equals(json.nextFieldName()) && FORMAT.equals(json.nextTextValue()));
      expect("version".equals(json.nextFieldName()) && json.nextToken() == JsonToken.VALUE_NUMBER_INT);
      int version = json.getIntValue();
      expect("tables".equals(json.nextFieldName()) && json.nextToken() == JsonToken.START_OBJECT);
      return into.fromRows(version, database -> rows(json, database));
    } catch (JsonParseException e) {
      throw new RefusedException(NO_FILE, e);
    }
  }

  private static void expect(boolean asWritten) {
    if (!asWritten) {
      throw new RefusedException(NO_FILE);
    }
  }

  private static void rows(JsonParser json, EverythingInto database) throws IOException {
    try {
      for (String table = json.nextFieldName(); table != null; table = json.nextFieldName()) {
        expect(json.nextToken() == JsonToken.START_ARRAY);
        while (json.nextToken() == JsonToken.START_OBJECT) {
          database.row(table, row(json));
        }
        expect(json.currentToken() == JsonToken.END_ARRAY);
      }
      expect(json.currentToken() == JsonToken.END_OBJECT && "numbers".equals(json.nextFieldName()) && json.nextToken() == JsonToken.START_OBJECT);
      for (String table = json.nextFieldName(); table != null; table = json.nextFieldName()) {
        expect(json.nextToken() == JsonToken.VALUE_NUMBER_INT);
        database.number(table, json.getLongValue());
      }
      expect(json.currentToken() == JsonToken.END_OBJECT && json.nextToken() == JsonToken.END_OBJECT);
    } catch (JsonParseException e) {
      throw new RefusedException(NO_FILE, e);
    }
  }

  private static Map<String, @Nullable Object> row(JsonParser json) throws IOException {
    Map<String, @Nullable Object> row = new LinkedHashMap<>();
    for (String column = json.nextFieldName(); column != null; column = json.nextFieldName()) {
      JsonToken token = json.nextToken();
      expect(token != null && token.isScalarValue());
      row.put(
          column,
          token == JsonToken.VALUE_NULL ? null
              : token == JsonToken.VALUE_NUMBER_INT ? (Object) json.getLongValue()
              : token == JsonToken.VALUE_NUMBER_FLOAT ? (Object) json.getDoubleValue() : json.getText());
    }
    return row;
  }
}
