/** Rules of the family packaging, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { airPrimaryTooLarge } from "./air-primary-too-large.ts";
import { airVolumeTooLarge } from "./air-volume-too-large.ts";
import { airWeightTooLarge } from "./air-weight-too-large.ts";
import { dryIceNotVented } from "./dry-ice-not-vented.ts";
import { dryIceWeightMissing } from "./dry-ice-weight-missing.ts";
import { formalinNotApart } from "./formalin-not-apart.ts";
import { formalinOnDryIce } from "./formalin-on-dry-ice.ts";
import { frozenSampleOnColdPacks } from "./frozen-sample-on-cold-packs.ts";
import { parcelArrivesBeforeSent } from "./parcel-arrives-before-sent.ts";
import { parcelBeforeSample } from "./parcel-before-sample.ts";
import { parcelCategoryTooLow } from "./parcel-category-too-low.ts";
import { parcelContactMissing } from "./parcel-contact-missing.ts";
import { parcelCoolantInside } from "./parcel-coolant-inside.ts";
import { parcelExemptThoughIll } from "./parcel-exempt-though-ill.ts";
import { parcelFigureImplausible } from "./parcel-figure-implausible.ts";
import { parcelFormInside } from "./parcel-form-inside.ts";
import { parcelFormMissing } from "./parcel-form-missing.ts";
import { parcelMarkMissing } from "./parcel-mark-missing.ts";
import { parcelMarkTooSmall } from "./parcel-mark-too-small.ts";
import { parcelNotCooled } from "./parcel-not-cooled.ts";
import { parcelOuterSoft } from "./parcel-outer-soft.ts";
import { parcelOuterTooSmall } from "./parcel-outer-too-small.ts";
import { parcelPackingUnrecorded } from "./parcel-packing-unrecorded.ts";
import { parcelPrimaryLeaks } from "./parcel-primary-leaks.ts";
import { parcelSampleUnknown } from "./parcel-sample-unknown.ts";
import { parcelTooLateForCulture } from "./parcel-too-late-for-culture.ts";
import { parcelWithoutAbsorbent } from "./parcel-without-absorbent.ts";
import { parcelWithoutSamples } from "./parcel-without-samples.ts";
import { parcelWithoutSecondary } from "./parcel-without-secondary.ts";
import { sampleInNoParcel } from "./sample-in-no-parcel.ts";
import { sampleInTwoParcels } from "./sample-in-two-parcels.ts";

export const packagingRules: readonly Rule[] = [
  parcelPrimaryLeaks,
  parcelWithoutAbsorbent,
  parcelWithoutSecondary,
  parcelOuterSoft,
  parcelMarkMissing,
  parcelOuterTooSmall,
  parcelMarkTooSmall,
  parcelFigureImplausible,
  airPrimaryTooLarge,
  airVolumeTooLarge,
  airWeightTooLarge,
  parcelContactMissing,
  parcelFormMissing,
  parcelFormInside,
  parcelCoolantInside,
  parcelPackingUnrecorded,
  dryIceWeightMissing,
  dryIceNotVented,
  formalinNotApart,
  parcelCategoryTooLow,
  parcelExemptThoughIll,
  parcelTooLateForCulture,
  parcelSampleUnknown,
  sampleInNoParcel,
  sampleInTwoParcels,
  parcelBeforeSample,
  parcelArrivesBeforeSent,
  parcelWithoutSamples,
  parcelNotCooled,
  frozenSampleOnColdPacks,
  formalinOnDryIce,
];
