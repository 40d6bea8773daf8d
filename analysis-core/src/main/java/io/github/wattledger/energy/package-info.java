/**
 * What a ride asked of the body: energy and carbohydrate used, each as a range, what was eaten beside them where the
 * rider says so, and whether a rider who faded can have been short of carbohydrate.
 *
 * <p>Nothing here is a diagnosis or a diet, and nothing says how much somebody should weigh or eat less. What to eat, and
 * whether to train or race at all, is for a licensed dietitian or a physician.
 */
@NullMarked
package io.github.wattledger.energy;

import org.jspecify.annotations.NullMarked;
