/**
 * What is different where the program came as one folder with its own Java: where the data lie, the browser, the archive of loaded
 * classes; and what came with it.
 */
@NullMarked
package boundwright.cli.installed;

import org.jspecify.annotations.NullMarked;
