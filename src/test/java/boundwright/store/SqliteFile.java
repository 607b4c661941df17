package boundwright.store;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.Tag;

/** A test of the SQLite file itself, which the second run of the store's tests, on PostgreSQL, leaves out. */
@Target({ElementType.TYPE, ElementType.METHOD})
@Retention(RetentionPolicy.RUNTIME)
@Tag("sqlite-file")
public @interface SqliteFile {
  /** Why it says nothing about another database. */
  String value();
}
