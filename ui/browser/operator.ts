// The invented operator, for tests that begin on an empty folder.
import type { OperatorInput } from '../src/lib/generated/OperatorInput';

export const demoOperator: OperatorInput = {
  name: 'Demo Operator',
  certificate: 'DEMO-CERT-0001',
  firm: '',
  emergency_contacts: '',
  limits: {
    profile: '',
    wind_calm: { text: '', unit: 'km/h' },
    wind_most: { text: '', unit: 'km/h' },
    temp_low: { text: '', unit: 'degC' },
    temp_high: { text: '', unit: 'degC' },
    keep_back: { text: '', unit: 'm' },
    reminder: { text: '', unit: 'min' },
  },
};
