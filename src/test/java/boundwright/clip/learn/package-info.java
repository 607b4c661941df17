/** Whether training further does what it says: gradients against the framework, labels against the made-up truth. */
@NullMarked
package boundwright.clip.learn;

import org.jspecify.annotations.NullMarked;
