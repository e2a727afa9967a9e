/** Rules of the family packaging, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { formalinNotApart } from "./formalin-not-apart.ts";
import { parcelCategoryTooLow } from "./parcel-category-too-low.ts";
import { parcelEntries } from "./parcel-entries.ts";
import { parcelFigureImplausible } from "./parcel-figure-implausible.ts";
import { parcelLimits } from "./parcel-limits.ts";
import { parcelPackingUnrecorded } from "./parcel-packing-unrecorded.ts";
import { parcelSampleUnknown } from "./parcel-sample-unknown.ts";
import { parcelWithoutSamples } from "./parcel-without-samples.ts";
import { sampleInNoParcel } from "./sample-in-no-parcel.ts";
import { sampleInTwoParcels } from "./sample-in-two-parcels.ts";
import { samplesInParcel } from "./samples-in-parcel.ts";

export const packagingRules: readonly Rule[] = [
  ...parcelEntries,
  ...parcelLimits,
  parcelFigureImplausible,
  parcelPackingUnrecorded,
  formalinNotApart,
  parcelCategoryTooLow,
  ...samplesInParcel,
  parcelSampleUnknown,
  sampleInNoParcel,
  sampleInTwoParcels,
  parcelWithoutSamples,
];
